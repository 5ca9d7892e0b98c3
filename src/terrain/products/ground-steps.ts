import { type Crs, localPlane } from '../../geo/index.ts';
import type { Grid } from '../grid.ts';

/**
 * Sides of a raster's cells on the ground, metres, one a row, north first, measured at the middle column: metres per degree
 * at that latitude in a geographic system, without Mercator's stretching, with a plane's unit. Feed them to `streamProduct`.
 */
export function groundSteps(
  grid: Pick<Grid, 'width' | 'height' | 'x0' | 'y0' | 'stepX' | 'stepY'>,
  crs: Pick<Crs, 'toLonLat'>,
): { eastM: Float64Array; northM: Float64Array } {
  const { width, height, x0, y0, stepX, stepY } = grid;
  const eastM = new Float64Array(height);
  const northM = new Float64Array(height);
  const x = x0 + ((width - 1) / 2) * stepX;
  for (let row = 0; row < height; row++) {
    const y = y0 - row * stepY;
    const [lon, lat] = crs.toLonLat(x, y);
    const plane = localPlane({ lon, lat });
    const side = (dx: number, dy: number): number => {
      const [aLon, aLat] = crs.toLonLat(x - dx / 2, y - dy / 2);
      const [bLon, bLat] = crs.toLonLat(x + dx / 2, y + dy / 2);
      const a = plane.toLocal({ lon: aLon, lat: aLat });
      const b = plane.toLocal({ lon: bLon, lat: bLat });
      return Math.hypot(b.x - a.x, b.y - a.y);
    };
    eastM[row] = side(stepX, 0);
    northM[row] = side(0, stepY);
  }
  return { eastM, northM };
}
