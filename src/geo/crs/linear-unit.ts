import { FOOT_M, US_SURVEY_FOOT_M, UserError } from '../../units/index.ts';
import { type GeoKeys, USER_DEFINED } from './geo-keys.ts';

/** Metres in the linear units of the EPSG data set that rasters are met in. [source: epsg] */
const byCode: Readonly<Record<number, number>> = { 9001: 1, 9002: FOOT_M, 9003: US_SURVEY_FOOT_M };

/** Metres in the linear unit that the keys state, or null where they state none. Throws `UserError` for other units. */
export function linearUnitOfGeoKeys(keys: GeoKeys, source: string): number | null {
  const { ProjLinearUnitsGeoKey: code, ProjLinearUnitSizeGeoKey: size } = keys;
  if (code === undefined) return null;
  const known = byCode[code];
  if (known) return known;
  if (code === USER_DEFINED && size !== undefined && size > 0) return size;
  throw new UserError(
    'crs-unit',
    `${source} counts its map coordinates in a unit that is not known here (EPSG unit ${code}); convert the raster with "gdalwarp -t_srs".`,
  );
}
