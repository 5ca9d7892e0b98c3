import { UserError } from '../../units/index.ts';
import { crsOfCode } from './crs-of-code.ts';
import type { EpsgTable } from './epsg-table.ts';
import { type GeoKeys, isCode } from './geo-keys.ts';

const GREENWICH = 8901;
const DEGREE = 9102;
/** A datum's code lies this far above that of its geographic system, for the datums of the original data set. [source: epsg] */
const DATUM_ABOVE = 2000;
/** Ellipsoids of Earth-centred datums: GRS 80 and WGS 84. [source: epsg] */
const ellipsoids: Readonly<Record<number, string>> = { 7019: 'GRS80', 7030: 'WGS84' };

/**
 * Ellipsoid, shift to WGS 84 and prime meridian of a user-defined system as "+" words. Throws `UserError` where the keys do
 * not give them or the geographic system they name cannot be used.
 */
export function baseOfGeoKeys(table: EpsgTable, keys: GeoKeys, source: string): string {
  if (keys.GeogAngularUnitsGeoKey !== undefined && keys.GeogAngularUnitsGeoKey !== DEGREE) {
    throw new UserError(
      'crs-angles',
      `${source} defines its projection with angles in another unit than degrees (EPSG unit ${keys.GeogAngularUnitsGeoKey}); convert the raster with "gdalwarp -t_srs".`,
    );
  }
  const shift = keys.GeogTOWGS84GeoKey ? ` +towgs84=${Array.from(keys.GeogTOWGS84GeoKey).join(',')}` : '';
  const { GeographicTypeGeoKey: geographic, GeogGeodeticDatumGeoKey: datum } = keys;
  if (isCode(geographic)) return ofGeographic(table, geographic, shift, source);
  const likely = isCode(datum) ? datum - DATUM_ABOVE : 0;
  if (table.horizontal(likely)?.definition.startsWith('+proj=longlat')) {
    return ofGeographic(table, likely, shift, source);
  }
  if (keys.GeogPrimeMeridianGeoKey !== undefined && keys.GeogPrimeMeridianGeoKey !== GREENWICH) {
    throw new UserError(
      'crs-refused',
      `${source} counts longitude from another meridian than Greenwich; convert the raster with "gdalwarp -t_srs".`,
    );
  }
  const ellipsoid = ellipsoidOf(keys);
  if (ellipsoid) return `${ellipsoid}${shift}`;
  throw new UserError(
    'crs-shift',
    `${source} defines its projection without a datum; give the coordinate reference system with --crs.`,
  );
}

function ofGeographic(table: EpsgTable, code: number, shift: string, source: string): string {
  const definition = table.horizontal(code)?.definition ?? '';
  if (shift && definition) return definition.replace(/\+proj=longlat|\+towgs84=\S+/g, '').trim() + shift;
  crsOfCode(table, code, null, source);
  return definition.replace('+proj=longlat', '').trim();
}

function ellipsoidOf(keys: GeoKeys): string | null {
  const { GeogEllipsoidGeoKey: code, GeogSemiMajorAxisGeoKey: a, GeogSemiMinorAxisGeoKey: b } = keys;
  const known = code === undefined ? undefined : ellipsoids[code];
  if (known) return `+ellps=${known}`;
  if (a === undefined) return null;
  if (keys.GeogInvFlatteningGeoKey) return `+a=${a} +rf=${keys.GeogInvFlatteningGeoKey}`;
  return b === undefined ? null : `+a=${a} +b=${b}`;
}
