import proj4 from 'proj4';
import { UserError, type VerticalUnit } from '../../units/index.ts';

/** The coordinate reference system of a raster as the reader needs it. */
export interface RasterCrs {
  /** 'EPSG:32609', or the file's own name for it. */
  readonly text: string;
  /** Metres in one unit of its coordinates; null where they are degrees. */
  readonly unitM: number | null;
  toRaster(lon: number, lat: number): [x: number, y: number];
  toLonLat(x: number, y: number): [lon: number, lat: number];
  readonly vertical: { readonly unit: VerticalUnit | null; readonly datum: string | null };
}

type GeoKeys = Readonly<Record<string, unknown>>;

export async function rasterCrs(keys: GeoKeys | null, option: string | undefined, source: string): Promise<RasterCrs> {
  const code = Number(keys?.ProjectedCSTypeGeoKey ?? keys?.GeographicTypeGeoKey ?? option?.replace(/^EPSG:/i, ''));
  const definition = interim(code);
  if (!definition) {
    throw new UserError(
      'no-crs',
      `${source} does not name a coordinate reference system that is known; give --crs EPSG:N.`,
    );
  }
  const projection = proj4('+proj=longlat +datum=WGS84 +no_defs', definition);
  return {
    text: `EPSG:${code}`,
    unitM: code === 4326 ? null : 1,
    toRaster: (lon, lat) => projection.forward([lon, lat]) as [number, number],
    toLonLat: (x, y) => projection.inverse([x, y]) as [number, number],
    vertical: { unit: keys?.VerticalCSTypeGeoKey === 5703 ? 'm' : null, datum: null },
  };
}

function interim(code: number): string | null {
  if (code === 4326) return '+proj=longlat +datum=WGS84 +no_defs';
  const zone = code % 100;
  if (code > 32600 && code <= 32660) return `+proj=utm +zone=${zone} +datum=WGS84 +units=m +no_defs`;
  if (code > 26900 && code <= 26923) return `+proj=utm +zone=${zone} +ellps=GRS80 +towgs84=0,0,0 +units=m +no_defs`;
  return null;
}
