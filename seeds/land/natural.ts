import type { Grid } from '../../src/terrain/index.ts';
import { bandNoise, smoothNoise } from '../fields/noise.ts';
import { emptyGrid } from '../fields/raster.ts';
import { addSpline } from '../fields/spline.ts';
import { area, creek, roughness, seed } from '../recipe.ts';
import type { Line } from '../road/line.ts';
import { creekFloorAt, forCellsByCreek } from './creek.ts';

/** The ground before any road, metres at 1 m cells over the area, and the unit waves (rms 1, 3 to 10 m long) laid on it. */
export interface Natural {
  readonly ground: Grid;
  readonly waves: Grid;
  /** What the waves add to the ground there, metres. */
  readonly uneven: Grid;
}

/** Lays unevenness of 3 to 10 m wave length and the creek's bed on the land. */
export function makeNatural(land: Grid, line: Line): Natural {
  const ground = emptyGrid(area, 1);
  const waves = emptyGrid(area, 1);
  addSpline(ground, land);
  bandNoise(waves.data, waves.width, waves.height, 1, 3, seed + 21);
  const places = emptyGrid(area, 16);
  smoothNoise(places.data, places.width, places.height, 1, seed + 22);
  const strength = emptyGrid(area, 1);
  addSpline(strength, places, 1.5);
  const { data } = ground;
  const uneven = strength.data;
  for (let i = 0; i < data.length; i++) {
    uneven[i] = roughness.naturalM * Math.exp(roughness.naturalSpread * uneven[i]) * waves.data[i];
    data[i] += uneven[i];
  }
  forCellsByCreek(line, ground, 90, (i, at) => {
    const floor = creekFloorAt(at, data[i]);
    // Where the floor was laid it keeps a third of the hillside's waves: gravel bars and hummocks.
    const bed = at.bedM + Math.max(0, Math.abs(at.offsetM) - creek.halfWidthM) * 0.8;
    const ripple = 0.03 * waves.data[i];
    if (floor >= data[i] - 0.02) {
      data[i] = floor + ripple;
      uneven[i] = ripple;
    }
    if (bed < data[i]) data[i] = Math.max(bed, at.bedM);
  });
  return { ground, waves, uneven: strength };
}
