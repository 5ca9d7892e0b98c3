import { localPlane } from '../../src/geo/index.ts';
import type { Grid, Ground, SurfaceInfo } from '../../src/terrain/index.ts';

export const bareEarth: SurfaceInfo = {
  source: 'invented.tif',
  kind: 'bare earth',
  crs: 'EPSG:32609',
  cellM: 1,
  verticalUnit: 'm',
  verticalUnitAssumed: false,
  verticalDatum: null,
  verticalRmseM: 0.05,
  collectedOn: null,
};

/** A ground of `size` × `size` cells of `cellM` around the origin of a plane, with heights from a formula of plane metres. */
export function groundFrom(height: (x: number, y: number) => number, size = 101, cellM = 1): Ground {
  const half = ((size - 1) / 2) * cellM;
  const data = new Float64Array(size * size);
  for (let row = 0; row < size; row++) {
    for (let col = 0; col < size; col++) data[row * size + col] = height(col * cellM - half, half - row * cellM);
  }
  const grid: Grid = { width: size, height: size, data, x0: -half, y0: half, stepX: cellM, stepY: cellM };
  const fit = Float64Array.of(half / cellM, 1 / cellM, 0, 0, half / cellM, 0, -1 / cellM, 0, 0, 0, 0, 0);
  return { plane: localPlane({ lon: -128, lat: 44 }), layers: [{ info: { ...bareEarth, cellM }, grid, fit }] };
}
