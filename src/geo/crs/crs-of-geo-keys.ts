import { UserError } from '../../units/index.ts';
import type { Crs, VerticalCrs } from './crs.ts';
import { crsOfCode } from './crs-of-code.ts';
import { crsOfDefinition } from './crs-of-definition.ts';
import { crsOfText } from './crs-of-text.ts';
import { definitionOfGeoKeys } from './definition-of-geo-keys.ts';
import type { EpsgTable } from './epsg-table.ts';
import { type GeoKeys, isCode, USER_DEFINED } from './geo-keys.ts';
import { linearUnitOfGeoKeys } from './linear-unit.ts';
import { verticalOfCode } from './vertical.ts';

const MODEL_GEOCENTRIC = 3;
const DEGREE = 9102;

/**
 * The system that a GeoTIFF's keys state, or null where they state none, so that the user must be asked. Throws `UserError`
 * for systems that are stated but cannot be used. The unit of heights that the keys give by themselves
 * (VerticalUnitsGeoKey) is not looked at here.
 */
export function crsOfGeoKeys(table: EpsgTable, keys: GeoKeys, source: string): Crs | null {
  const crs = horizontal(table, keys, source);
  if (!crs) return null;
  const vertical = verticalOfKeys(table, keys, source);
  return vertical ? { ...crs, text: withVertical(crs.text, keys), vertical } : crs;
}

/** What the keys say of the heights' system, or null. */
function verticalOfKeys(table: EpsgTable, keys: GeoKeys, source: string): VerticalCrs | null {
  const code = keys.VerticalCSTypeGeoKey;
  const named = keys.VerticalCitationGeoKey?.trim() || null;
  const known = isCode(code) ? verticalOfCode(table, code, source) : null;
  if (known) return known;
  return named !== null || isCode(code) ? { unit: null, datum: named } : null;
}

const withVertical = (text: string, { VerticalCSTypeGeoKey: code }: GeoKeys): string =>
  isCode(code) && text.startsWith('EPSG:') ? `${text}+${code}` : text;

function horizontal(table: EpsgTable, keys: GeoKeys, source: string): Crs | null {
  const { ProjectedCSTypeGeoKey: projected, GeographicTypeGeoKey: geographic, GTModelTypeGeoKey: model } = keys;
  if (model === MODEL_GEOCENTRIC) {
    throw new UserError(
      'crs-refused',
      `${source} is in coordinates from the Earth's centre; convert the raster with "gdalwarp -t_srs".`,
    );
  }
  if (isCode(projected)) return withStatedUnit(crsOfCode(table, projected, null, source), keys, source);
  const text = /(?:ESRI PE String = )((?:PROJCS|GEOGCS)\[.*\])/s.exec(citation(keys))?.[1];
  if (projected === USER_DEFINED || keys.ProjCoordTransGeoKey !== undefined || keys.ProjectionGeoKey !== undefined) {
    if (text) return crsOfText(table, text, source);
    return crsOfDefinition(definitionOfGeoKeys(table, keys, source), name(keys) ?? 'user-defined', null, source);
  }
  if (isCode(geographic)) {
    degreesOnly(keys, source);
    return crsOfCode(table, geographic, null, source);
  }
  if (geographic !== USER_DEFINED) return null;
  if (text) return crsOfText(table, text, source);
  degreesOnly(keys, source);
  return crsOfDefinition(definitionOfGeoKeys(table, keys, source), name(keys) ?? 'user-defined', null, source);
}

/** A code and a unit beside it must say the same: which of the two a program believes differs. */
function withStatedUnit(crs: Crs, keys: GeoKeys, source: string): Crs {
  const stated = linearUnitOfGeoKeys(keys, source);
  if (stated === null || crs.unitM === null || Math.abs(stated / crs.unitM - 1) < 1e-9) return crs;
  throw new UserError(
    'crs-unit',
    `${source} names ${crs.text}, whose unit is ${crs.unitM} m, but states a unit of ${stated} m beside it; correct the file with "gdal_edit.py -a_srs".`,
  );
}

function degreesOnly({ GeogAngularUnitsGeoKey: unit }: GeoKeys, source: string): void {
  if (unit === undefined || unit === DEGREE) return;
  throw new UserError(
    'crs-angles',
    `${source} counts longitude and latitude in another unit than degrees (EPSG unit ${unit}); convert the raster with "gdalwarp -t_srs EPSG:4326".`,
  );
}

const citation = (keys: GeoKeys): string => `${keys.GTCitationGeoKey ?? ''} ${keys.PCSCitationGeoKey ?? ''}`;

/** The file's own name for its system, without the words that writers put before it. */
const name = (keys: GeoKeys): string | null =>
  (keys.PCSCitationGeoKey ?? keys.GTCitationGeoKey ?? '').replace(/^PCS Name = |\|.*$/g, '').trim() || null;
