import { toRadians } from '../units/index.ts';

/** The rule by which a hillside ends: the first 15 m whose mean is under 10° with no 5 m over 15° in them (practice). */
export const LEVEL = { runM: 15, meanDeg: 10, pieceM: 5, pieceDeg: 15 } as const;

const MEAN_TAN = Math.tan(toRadians(LEVEL.meanDeg));
const PIECE_TAN = Math.tan(toRadians(LEVEL.pieceDeg));

/**
 * True where the ground levels at point i of a path: `height[]` in metres every `stepM` horizontal, point i and at least
 * 15 m after it known. Only falls count; a rise is no slope to go down.
 */
export function levelsAt(height: ArrayLike<number>, i: number, stepM: number): boolean {
  const run = Math.round(LEVEL.runM / stepM);
  const piece = Math.max(1, Math.round(LEVEL.pieceM / stepM));
  if (height[i] - height[i + run] >= MEAN_TAN * run * stepM) return false;
  for (let j = i; j + piece <= i + run; j++) {
    if (height[j] - height[j + piece] > PIECE_TAN * piece * stepM) return false;
  }
  return true;
}

/** A fall line that levels within this distance only comes down a low bank, metres: as long as the rule's own pieces. */
export const LOW_BANK_M = LEVEL.pieceM;

/**
 * Foot of a low bank. The rule may hold from part-way down one, or from its top; so where it holds from point `level`
 * within 5 m of the edge, the bank is followed to the middle of the last metre that falls by 10° or more. Index of that
 * point, `level` where there is none farther down.
 */
export function bankFoot(height: ArrayLike<number>, level: number, stepM: number): number {
  const run = Math.round(LEVEL.runM / stepM);
  const piece = Math.max(1, Math.round(1 / stepM));
  let foot = level;
  for (let i = Math.max(piece, level); i <= level + run && i < height.length; i++) {
    if (height[i - piece] - height[i] >= MEAN_TAN * piece * stepM) foot = Math.max(foot, i - (piece >> 1));
  }
  return foot;
}
