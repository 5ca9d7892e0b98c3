import { agreedCrs, type Crs, crsOfGeoKeys, crsOfText, loadEpsgTable } from '../../geo/index.ts';
import type { Georeference, RasterKeys } from '../tiff/index.ts';

/**
 * The coordinate reference system of a raster: what its keys state, filled in by what the user gave. Throws `UserError`
 * where neither says it, where they differ, or where it cannot be used.
 */
export async function rasterCrs(
  keys: RasterKeys,
  given: string | undefined,
  place: Georeference,
  source: string,
): Promise<Crs> {
  const table = await loadEpsgTable();
  const ofFile = crsOfGeoKeys(table, keys, source);
  const ofOption = given === undefined ? null : crsOfText(table, given, '--crs');
  return agreedCrs(ofFile, ofOption, { x: place.x0, y: place.y0 }, source);
}
