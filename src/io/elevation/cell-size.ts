import { type Crs, localPlane } from '../../geo/index.ts';
import type { Georeference } from '../tiff/index.ts';

/** Up to this share between the grid's own metres and the ground's, a cell is told by its round size: 1 m, not 1.0004 m. */
const GRID_SCALE = 0.005;

/** The larger side of the cell at (col, row), metres on the ground. */
export function cellSize(place: Georeference, crs: Crs, col: number, row: number): number {
  const x = place.x0 + col * place.stepX;
  const y = place.y0 - row * place.stepY;
  const [lon, lat] = crs.toLonLat(x, y);
  const plane = localPlane({ lon, lat });
  const away = (dx: number, dy: number): number => {
    const [toLon, toLat] = crs.toLonLat(x + dx, y + dy);
    const to = plane.toLocal({ lon: toLon, lat: toLat });
    return Math.hypot(to.x, to.y);
  };
  const ground = Math.max(away(place.stepX, 0), away(0, place.stepY));
  const own = crs.unitM === null ? ground : Math.max(place.stepX, place.stepY) * crs.unitM;
  return Math.abs(ground / own - 1) < GRID_SCALE ? own : ground;
}
