import { heightAt } from './sample-line.ts';
import { type Ground, SCREENING_CELL_M } from './surface.ts';

/** A rise of this much above everything around it is no ground, metres (practice). */
const RISE_M = 2;
/** Distances at which "around" is looked at, metres and at least so many cells: a crown, a house, a hall. */
const RINGS = [
  { metres: 4, cells: 2 },
  { metres: 8, cells: 4 },
  { metres: 12, cells: 6 },
];
/** Spacing of the points looked at, metres, and how far from the line. */
const SPACING_M = 2;
const REACH_M = 30;
/** A wall of an object falls by this much more than the slope around it, metres per metre, somewhere on each side. */
const WALL = 0.6;
/**
 * Share of the points that must stand out. In a surface model of a town 1.6 to 16 % do, in its bare earth, beside a forest
 * road and on steep made ground 0.3 % at most; a lone boulder stays under it.
 */
const SHARE = 0.006;

const DIRECTIONS = Array.from({ length: 8 }, (_, i) => [Math.cos((i * Math.PI) / 4), Math.sin((i * Math.PI) / 4)]);

/**
 * True where trees or roofs seem to stand in the ground within 30 m of a line (x, y pairs, plane metres): isolated rises of
 * over 2 m with sharp sides, higher than all eight points 4, 8 or 12 m around them but for their common slope. False also
 * where there is no ground to look at, and for coarse cells, which screen anyway.
 */
export function looksLikeSurfaceModel(ground: Ground, line: ArrayLike<number>): boolean {
  const cellM = Math.max(1, ground.layers[0]?.info.cellM ?? 1);
  if (cellM > SCREENING_CELL_M) return false;
  const rings = RINGS.map(({ metres, cells }) => Math.max(metres, cells * cellM));
  let seen = 0;
  let standing = 0;
  let run = SPACING_M;
  for (let i = 2; i + 1 < line.length; i += 2) {
    const dx = line[i] - line[i - 2];
    const dy = line[i + 1] - line[i - 1];
    const length = Math.hypot(dx, dy);
    for (run += length; run >= SPACING_M && length > 0; run -= SPACING_M) {
      // A point every SPACING_M along the piece, then across it.
      const back = (run - SPACING_M) / length;
      const x = line[i] - back * dx;
      const y = line[i + 1] - back * dy;
      for (let across = -REACH_M; across <= REACH_M; across += SPACING_M) {
        const px = x + (across * dy) / length;
        const py = y - (across * dx) / length;
        const height = heightAt(ground, px, py);
        if (Number.isNaN(height)) continue;
        seen++;
        if (rings.some((ring) => standsOut(ground, px, py, height, ring, cellM))) standing++;
      }
    }
  }
  return seen > 0 && standing >= SHARE * seen;
}

/**
 * True where a point is over all eight around it once the slope that those eight lie on is taken out, and falls off sharply
 * toward each: a convex hillside also stands over its surroundings, but has no walls.
 */
function standsOut(ground: Ground, x: number, y: number, height: number, ring: number, cellM: number): boolean {
  let east = 0;
  let north = 0;
  for (let i = 0; i < 4; i++) {
    const [ux, uy] = DIRECTIONS[i];
    const there = heightAt(ground, x + ring * ux, y + ring * uy);
    const back = heightAt(ground, x - ring * ux, y - ring * uy);
    if (!(height - (there + back) / 2 > RISE_M)) return false;
    heights[i] = there;
    heights[i + 4] = back;
    east += ((there - back) * ux) / 4;
    north += ((there - back) * uy) / 4;
  }
  for (let i = 0; i < 8; i++) {
    const [ux, uy] = DIRECTIONS[i];
    const slope = (east * ux + north * uy) / ring;
    if (!(height - heights[i] + slope * ring > RISE_M && fallsSharply(ground, x, y, ux, uy, ring, slope, cellM)))
      return false;
  }
  return true;
}

/** True where the ground falls like a wall somewhere between a point and its ring. */
function fallsSharply(
  ground: Ground,
  x: number,
  y: number,
  ux: number,
  uy: number,
  ring: number,
  slope: number,
  cellM: number,
): boolean {
  let before = heightAt(ground, x, y);
  for (let r = cellM; r <= ring + 1e-9; r += cellM) {
    const here = heightAt(ground, x + r * ux, y + r * uy);
    if (before - here + slope * cellM > WALL * cellM) return true;
    before = here;
  }
  return false;
}

const heights = new Float64Array(8);
