import type { GeoTIFFImage } from 'geotiff';
import type { GeoKeys } from '../../geo/index.ts';
import { UserError } from '../../units/index.ts';

/** Keys that are read here beside those of the coordinate reference system. [source: geotiff11] */
export interface RasterKeys extends GeoKeys {
  readonly GTRasterTypeGeoKey?: number;
  readonly VerticalUnitsGeoKey?: number;
}

/** The georeferencing keys of an image by name; empty where it has none. Throws `UserError` where they cannot be read. */
export function geoKeys(image: GeoTIFFImage, source: string): RasterKeys {
  try {
    return image.getGeoKeys() ?? {};
  } catch (cause) {
    throw new UserError(
      'broken-tiff',
      `${source} refers to georeferencing values that it does not hold; write it again with "gdal_translate".`,
      { cause },
    );
  }
}
