import type { Grid } from '../../src/terrain/index.ts';

/** A `Grid` of float32 zeros covering west, south to east, north (CRS metres) with square cells; the cell must divide both sides. */
export function emptyGrid(box: Box, cell: number): Grid & { readonly data: Float32Array } {
  const width = Math.round((box.east - box.west) / cell);
  const height = Math.round((box.north - box.south) / cell);
  return {
    width,
    height,
    data: new Float32Array(width * height),
    x0: box.west + cell / 2,
    y0: box.north - cell / 2,
    stepX: cell,
    stepY: cell,
  };
}

/** An upright rectangle, CRS metres. */
export interface Box {
  readonly west: number;
  readonly south: number;
  readonly east: number;
  readonly north: number;
}

/** The rectangle that reaches `margin` metres past `box` on every side. */
export const grown = (box: Box, margin: number): Box => ({
  west: box.west - margin,
  south: box.south - margin,
  east: box.east + margin,
  north: box.north + margin,
});
