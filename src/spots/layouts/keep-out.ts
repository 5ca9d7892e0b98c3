import type { PointM } from '../../geo/index.ts';
import type { Candidate } from './candidate.ts';
import type { HaulFrame } from './haul-frame.ts';

/** The fall line under a working line is kept clear this far to either side, metres (common practice, no source). */
const ASIDE_M = 3;

/**
 * Ground nobody stands on, as a closed ring: the fall line under the working line from the edge down, and in a turned haul the
 * inside of the rope's angle, edge, bend and anchor, into which the line would snap if the change of direction failed.
 */
export function keepOut(
  { edge, back }: Pick<HaulFrame, 'edge' | 'back'>,
  { turn, anchor, along, kind }: Pick<Candidate, 'turn' | 'anchor' | 'along' | 'kind'>,
  road: PointM,
  lengthM: number,
): PointM[] {
  const right = { x: -back.y, y: back.x };
  const at = (aside: number, down: number): PointM => ({
    x: edge.x + right.x * aside - back.x * down,
    y: edge.y + right.y * aside - back.y * down,
  });
  // Which way along the road the angle opens, told by the side of the descent's line on which the anchor lies.
  const sign = kind === 'turned' && right.x * road.x * along + right.y * road.y * along < 0 ? -1 : 1;
  const near = at(sign * ASIDE_M, 0);
  const far = at(-sign * ASIDE_M, 0);
  const down = [at(-sign * ASIDE_M, lengthM), at(sign * ASIDE_M, lengthM)];
  const inside = turn === null ? [] : [{ x: anchor.x, y: anchor.y }, { x: turn.bend.x, y: turn.bend.y }, edge];
  return [near, ...inside, far, ...down, near];
}
