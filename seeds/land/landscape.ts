import type { Grid } from '../../src/terrain/index.ts';
import { blur } from '../fields/blur.ts';
import { smoothNoise } from '../fields/noise.ts';
import { type Box, emptyGrid } from '../fields/raster.ts';
import { landscape, seed } from '../recipe.ts';
import type { Line } from '../road/line.ts';
import { drainage } from './drainage.ts';

/**
 * The bare shape of the land, metres, on a coarse lattice over `box`: hills that rise evenly and are worn by the water
 * that gathers on them down to the creek, never steeper than their rock stands (the implicit stream-power scheme of Braun
 * and Willett 2013 with a slope limit; creep rounds the ridges). `creek` holds x, y, z.
 */
export function wearLandscape(box: Box, creek: Line): Grid {
  const grid = emptyGrid(box, landscape.cellM);
  const { width, height, data, stepX: cell } = grid;
  const count = width * height;
  const bed = creekBed(grid, creek);
  const rock = new Float32Array(count);
  smoothNoise(rock, width, height, 9, seed + 1);
  const grain = new Float32Array(count);
  smoothNoise(grain, width, height, 1, seed + 2);
  for (let i = 0; i < count; i++) data[i] = bed.toCreek[i] * 0.05 + bed.level[i] + grain[i] * 2;
  const stable = new Float32Array(count);
  const [softest, hardest] = landscape.stable;
  const wear = 1 / landscape.steepness;
  const flow = drainage(width, height, seed + 3);
  for (let step = 0; step < landscape.steps; step++) {
    for (let i = 0; i < count; i++) {
      // Beds of hard and soft rock lie level, so that walls and terraces follow the contours.
      const beds = 0.5 + 0.28 * Math.sin((data[i] - 18 * rock[i]) / 11) + 0.22 * rock[i];
      stable[i] = softest + (hardest - softest) * Math.min(1, Math.max(0, beds)) ** 1.6;
    }
    flow.route(data, bed.fixed, cell);
    const { order, receiver, distance, gathered } = flow;
    for (let k = 0; k < count; k++) {
      const i = order[k];
      const down = receiver[i];
      if (down === i) {
        if (!bed.fixed[i]) data[i] += landscape.liftPerStepM;
        continue;
      }
      const factor = (wear * landscape.liftPerStepM * Math.sqrt(gathered[i])) / distance[i];
      const worn = (data[i] + landscape.liftPerStepM + factor * data[down]) / (1 + factor);
      data[i] = Math.min(worn, data[down] + stable[i] * distance[i]);
    }
    creep(data, width, height, bed.fixed);
  }
  blur(data as Float32Array, width, height, 1, 3);
  return grid;
}

/** Which cells the creek runs through, its level there, and for every cell the level and distance of the nearest creek. */
function creekBed(grid: Grid, creek: Line) {
  const count = grid.width * grid.height;
  const fixed = new Uint8Array(count);
  const level = new Float32Array(count);
  const toCreek = new Float32Array(count);
  const { x, y, z } = creek;
  for (let r = 0, i = 0; r < grid.height; r++) {
    for (let c = 0; c < grid.width; c++, i++) {
      const px = grid.x0 + c * grid.stepX;
      const py = grid.y0 - r * grid.stepY;
      let best = Number.POSITIVE_INFINITY;
      let at = 0;
      for (let k = 0; k < x.length; k += 4) {
        const d = (x[k] - px) ** 2 + (y[k] - py) ** 2;
        if (d < best) {
          best = d;
          at = k;
        }
      }
      toCreek[i] = Math.sqrt(best);
      level[i] = z[at];
      fixed[i] = toCreek[i] < grid.stepX * 0.75 ? 1 : 0;
    }
  }
  return { fixed, level, toCreek };
}

function creep(data: Grid['data'], width: number, height: number, fixed: Uint8Array): void {
  const before = data.slice();
  for (let r = 1; r < height - 1; r++) {
    for (let c = 1; c < width - 1; c++) {
      const i = r * width + c;
      if (fixed[i]) continue;
      const bend = before[i - 1] + before[i + 1] + before[i - width] + before[i + width] - 4 * before[i];
      data[i] += landscape.creepShare * bend;
    }
  }
}
