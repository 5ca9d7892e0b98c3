import type { Crs } from '../../geo/index.ts';
import type { LonLatBox } from '../ports.ts';
import type { Georeference } from '../tiff/index.ts';

const ALONG = 16;

/** The box in WGS 84 degrees around a raster's outline, which bends between the two CRSs: points are taken along it. */
export function lonLatBounds(place: Georeference, size: { width: number; height: number }, crs: Crs): LonLatBox {
  let west = Infinity;
  let south = Infinity;
  let east = -Infinity;
  let north = -Infinity;
  const take = (col: number, row: number): void => {
    const [lon, lat] = crs.toLonLat(place.x0 + col * place.stepX, place.y0 - row * place.stepY);
    if (!(Number.isFinite(lon) && Number.isFinite(lat))) return;
    west = Math.min(west, lon);
    east = Math.max(east, lon);
    south = Math.min(south, lat);
    north = Math.max(north, lat);
  };
  for (let i = 0; i <= ALONG; i++) {
    const col = -0.5 + (size.width * i) / ALONG;
    const row = -0.5 + (size.height * i) / ALONG;
    take(col, -0.5);
    take(col, size.height - 0.5);
    take(-0.5, row);
    take(size.width - 0.5, row);
  }
  return { west, south, east, north };
}
