import { join } from 'node:path';
import { gdalInfo, gdalValues } from './gdal.ts';
import { openData } from './open-data.ts';

/** A raster as GDAL reads it: heights row-major, north row first, NaN where the file says no data. */
export interface OpenRaster {
  readonly name: string;
  readonly path: string;
  readonly width: number;
  readonly height: number;
  readonly data: Float64Array;
  /** Cell sides in CRS units, and the centre of the north-west cell. */
  readonly stepX: number;
  readonly stepY: number;
  readonly x0: number;
  readonly y0: number;
}

/** Reads a raster of the open data through GDAL, or null where the data are not here. `raw` names a scratch file. */
export function openRaster(folder: string, file: string, raw: string): OpenRaster | null {
  const place = openData(folder);
  return place ? gdalRaster(join(place, file), raw) : null;
}

export function gdalRaster(path: string, raw: string): OpenRaster {
  const info = gdalInfo(path) as ReturnType<typeof gdalInfo> & { bands: { noDataValue?: number | 'NaN' }[] };
  const [width, height] = info.size;
  const [west, stepX, , north, , down] = info.geoTransform;
  const noData = Number(info.bands[0].noDataValue ?? Number.NaN);
  const data = gdalValues(path, raw);
  const single = Math.fround(noData);
  for (let i = 0; i < data.length; i++) if (data[i] === noData || Math.fround(data[i]) === single) data[i] = Number.NaN;
  return {
    name: path.split('/').slice(-2).join('/'),
    path,
    width,
    height,
    data,
    stepX,
    stepY: -down,
    x0: west + stepX / 2,
    y0: north + down / 2,
  };
}
