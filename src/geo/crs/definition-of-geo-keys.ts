import { UserError } from '../../units/index.ts';
import { baseOfGeoKeys } from './base-of-geo-keys.ts';
import type { EpsgTable } from './epsg-table.ts';
import { type GeoKeys, isCode } from './geo-keys.ts';
import { linearUnitOfGeoKeys } from './linear-unit.ts';

/**
 * The "+proj=" text of a user-defined system, from the keys of its projection and of its datum (OGC GeoTIFF 1.1, annex C for
 * the projection methods). Angles in the keys are degrees, lengths in the system's own unit. Throws `UserError` for methods
 * that are not known here and for datums without a way to WGS 84. [source: geotiff11]
 */
export function definitionOfGeoKeys(table: EpsgTable, keys: GeoKeys, source: string): string {
  const base = baseOfGeoKeys(table, keys, source);
  const method = keys.ProjCoordTransGeoKey;
  const zone = utmZone(keys.ProjectionGeoKey);
  const unit = linearUnitOfGeoKeys(keys, source) ?? 1;
  if (zone) return `+proj=utm +zone=${zone.number}${zone.south ? ' +south' : ''} ${base} +to_meter=${unit} +no_defs`;
  if (method === undefined && !isCode(keys.ProjectionGeoKey)) return `+proj=longlat ${base} +no_defs`;
  const own = method === undefined ? null : projection(method, keys);
  if (!own) {
    throw new UserError(
      'crs-projection',
      `${source} defines a projection that is not known here (GeoTIFF method ${method ?? keys.ProjectionGeoKey}); convert the raster with "gdalwarp -t_srs" to one with an EPSG code.`,
    );
  }
  const east = first(keys.ProjFalseEastingGeoKey, keys.ProjFalseOriginEastingGeoKey, keys.ProjCenterEastingGeoKey) ?? 0;
  const north =
    first(keys.ProjFalseNorthingGeoKey, keys.ProjFalseOriginNorthingGeoKey, keys.ProjCenterNorthingGeoKey) ?? 0;
  return `${own} +x_0=${east * unit} +y_0=${north * unit} ${base} +to_meter=${unit} +no_defs`;
}

/** The method's own part, or null for one that is not known here. */
function projection(method: number, keys: GeoKeys): string | null {
  const lat = first(keys.ProjNatOriginLatGeoKey, keys.ProjFalseOriginLatGeoKey, keys.ProjCenterLatGeoKey) ?? 0;
  const lon =
    first(
      keys.ProjNatOriginLongGeoKey,
      keys.ProjFalseOriginLongGeoKey,
      keys.ProjCenterLongGeoKey,
      keys.ProjStraightVertPoleLongGeoKey,
    ) ?? 0;
  const scale = first(keys.ProjScaleAtNatOriginGeoKey, keys.ProjScaleAtCenterGeoKey) ?? 1;
  const parallel1 = keys.ProjStdParallel1GeoKey;
  const parallel2 = keys.ProjStdParallel2GeoKey ?? parallel1;
  switch (method) {
    case 1:
      return `+proj=tmerc +lat_0=${lat} +lon_0=${lon} +k=${scale}`;
    case 7:
      if (parallel1 !== undefined) return `+proj=merc +lat_ts=${parallel1} +lon_0=${lon}`;
      return lat === 0 ? `+proj=merc +lon_0=${lon} +k=${scale}` : null;
    case 8:
      return parallel1 === undefined
        ? null
        : `+proj=lcc +lat_1=${parallel1} +lat_2=${parallel2} +lat_0=${lat} +lon_0=${lon}`;
    case 9:
      return `+proj=lcc +lat_1=${lat} +lat_0=${lat} +lon_0=${lon} +k_0=${scale}`;
    case 10:
      return `+proj=laea +lat_0=${lat} +lon_0=${lon}`;
    case 11:
      return parallel1 === undefined
        ? null
        : `+proj=aea +lat_1=${parallel1} +lat_2=${parallel2} +lat_0=${lat} +lon_0=${lon}`;
    case 15:
      return polarStereographic(lat, lon, scale);
    case 16:
      return `+proj=sterea +lat_0=${lat} +lon_0=${lon} +k=${scale}`;
    default:
      return null;
  }
}

/** The origin's latitude is the pole with a scale, or else the latitude of true scale. */
function polarStereographic(lat: number, lon: number, scale: number): string {
  const pole = lat < 0 ? -90 : 90;
  return Math.abs(lat) === 90
    ? `+proj=stere +lat_0=${pole} +lon_0=${lon} +k=${scale}`
    : `+proj=stere +lat_0=${pole} +lat_ts=${lat} +lon_0=${lon}`;
}

/** UTM among the EPSG conversion codes: 16001 to 16060 north, 16101 to 16160 south. [source: epsg] */
function utmZone(code: number | undefined): { number: number; south: boolean } | null {
  const number = code === undefined ? 0 : code % 100;
  const hundred = code === undefined ? 0 : Math.floor(code / 100);
  if ((hundred !== 160 && hundred !== 161) || number < 1 || number > 60) return null;
  return { number, south: hundred === 161 };
}

const first = (...values: (number | undefined)[]): number | undefined => values.find((value) => value !== undefined);
