import type { Grid } from '../../src/terrain/index.ts';
import { toRadians } from '../../src/units/index.ts';
import { smoothNoise } from '../fields/noise.ts';
import { type Box, emptyGrid, grown } from '../fields/raster.ts';
import { addSpline } from '../fields/spline.ts';
import { area, quarryHill, relief, seed, widerM } from '../recipe.ts';
import type { Line } from '../road/line.ts';
import { creekFloorAt, forCellsByCreek } from './creek.ts';
import { wearLandscape } from './landscape.ts';

/** The land before any road: a fine lattice for the 1 m area and a coarse one for the wider area, metres. */
export interface Land {
  readonly fine: Grid;
  readonly wide: Grid;
}

const FINE_M = 4;
const WIDE_M = 10;

/** Worn hills, hollows and gullies of middling size, and the creek's floor. */
export function makeLand(creek: Line): Land {
  const hills = wearLandscape(grown(area, widerM + 2 * 20), creek);
  const box = grown(area, widerM);
  const hollows = noiseLattice(box, 16, seed + 11);
  const gullies = noiseLattice(box, 6, seed + 12);
  const make = (bounds: Box, cell: number): Grid => {
    const grid = emptyGrid(bounds, cell);
    addSpline(grid, hills);
    addSpline(grid, hollows, relief.hollowsM);
    addSpline(grid, gullies, relief.gulliesM);
    layHillside(grid);
    layFloor(grid, creek);
    return grid;
  };
  const wide = { ...box, east: box.west + Math.ceil((box.east - box.west) / WIDE_M) * WIDE_M };
  wide.south = box.north - Math.ceil((box.north - box.south) / WIDE_M) * WIDE_M;
  return { fine: make(grown(area, 64), FINE_M), wide: make(wide, WIDE_M) };
}

function noiseLattice(box: Box, cell: number, from: number): Grid {
  const width = Math.ceil((box.east - box.west) / cell) + 4;
  const height = Math.ceil((box.north - box.south) / cell) + 4;
  const lattice = emptyGrid(
    {
      west: box.west - cell,
      south: box.south - cell,
      east: box.west - cell + width * cell,
      north: box.south - cell + height * cell,
    },
    cell,
  );
  smoothNoise(lattice.data, lattice.width, lattice.height, 1, from);
  return lattice;
}

/** Levels the valley floor and cuts the walls back beside it. */
function layFloor(grid: Grid, creek: Line): void {
  forCellsByCreek(creek, grid, 200, (i, at) => {
    grid.data[i] = creekFloorAt(at, grid.data[i]);
  });
}

/** Evens the hillside of the switchbacks; half of the gullies stay. */
function layHillside(grid: Grid): void {
  const { uphill, along, halfLengthM, halfDepthM, blendM } = quarryHill;
  const azimuth = toRadians(quarryHill.uphillAzimuthDeg);
  const upX = Math.sin(azimuth);
  const upY = Math.cos(azimuth);
  for (let r = 0, i = 0; r < grid.height; r++) {
    const y = grid.y0 - r * grid.stepY - area.south - quarryHill.middle[1];
    for (let c = 0; c < grid.width; c++, i++) {
      const x = grid.x0 + c * grid.stepX - area.west - quarryHill.middle[0];
      const up = x * upX + y * upY;
      const across = x * upY - y * upX;
      const outside = Math.hypot(Math.max(0, Math.abs(up) - halfDepthM), Math.max(0, Math.abs(across) - halfLengthM));
      if (outside >= blendM) continue;
      const t = 1 - outside / blendM;
      const share = 0.8 * t * t * (3 - 2 * t);
      grid.data[i] += share * (quarryHill.heightM + uphill * up + along * across - grid.data[i]);
    }
  }
}
