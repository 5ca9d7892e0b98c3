import type { Ground } from '../../src/terrain/index.ts';
import { groundOf } from './road-raster.ts';

interface Box {
  readonly west: number;
  readonly south: number;
  readonly east: number;
  readonly north: number;
}

/** Ground whose cells take a formula's height at their centres; the raster's own coordinates are the local plane's. */
export function groundFrom(height: (x: number, y: number) => number, box: Box, cellM = 1): Ground {
  const width = Math.round((box.east - box.west) / cellM) + 1;
  const rows = Math.round((box.north - box.south) / cellM) + 1;
  const data = new Float64Array(width * rows);
  for (let row = 0; row < rows; row++) {
    for (let col = 0; col < width; col++) {
      data[row * width + col] = height(box.west + col * cellM, box.north - row * cellM);
    }
  }
  return groundOf({ width, height: rows, data, x0: box.west, y0: box.north, stepX: cellM, stepY: cellM }, 0.05);
}
