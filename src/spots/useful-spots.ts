import type { SpotPlace } from './spot-id.ts';
import { REFUSES } from './standing-faults.ts';

/** A place where an apparatus can stand, as a search found it. */
export interface Found extends Omit<SpotPlace, 'apparatusId'> {
  /** Angle across the road, degrees; 90 is nose-in. */
  readonly acrossDeg: number;
  /** Bits of `FAULT`, all of them "check". */
  readonly faults: number;
  readonly lanesBlocked: number;
}

/**
 * Thins the places of one apparatus at one metre of road to those that differ in what a crew looks for: parallel to the road
 * the one nearest to the edge, the one farthest from it, the one that takes fewest lanes and the one with fewest checks;
 * across the road only where none of those fits; nose-in the one farthest from the edge. A blocker is given the one with
 * fewest lanes. Near the site, where a change of direction hangs on half a metre, all parallel ones are kept.
 *
 * @param side on which the site's edge lies, −1 left, 1 right
 */
export function usefulSpots(found: readonly Found[], side: -1 | 1, blocker: boolean, near: boolean): Found[] {
  const parallel = found.filter(({ acrossDeg }) => acrossDeg === 0);
  const outward = [...parallel].sort((a, b) => side * (b.offsetM - a.offsetM));
  const gentle = best(outward, leastLanes);
  if (blocker) return gentle ? [gentle] : [];
  const kept = new Set<Found>(near ? parallel : []);
  for (const pick of [outward.at(0), outward.at(-1), gentle, best(outward, fewestChecks)]) if (pick) kept.add(pick);
  const slanted = found.filter(({ acrossDeg }) => acrossDeg !== 0 && acrossDeg !== 90);
  const across = parallel.length === 0 ? best(slanted, leastLanes) : undefined;
  if (across) kept.add(across);
  const noseIn = found
    .filter(({ acrossDeg }) => acrossDeg === 90)
    .sort((a, b) => side * (a.offsetM - b.offsetM))
    .at(0);
  if (noseIn) kept.add(noseIn);
  return [...kept];
}

/** Bits that stand for checks, counted. */
function checks({ faults }: Found): number {
  let count = 0;
  for (let bits = faults & ~REFUSES; bits > 0; bits >>= 1) count += bits & 1;
  return count;
}

const leastLanes = (a: Found, b: Found): number => a.lanesBlocked - b.lanesBlocked || checks(a) - checks(b);
const fewestChecks = (a: Found, b: Found): number => checks(a) - checks(b) || a.lanesBlocked - b.lanesBlocked;

/** The first of the least. */
const best = (list: readonly Found[], order: (a: Found, b: Found) => number): Found | undefined =>
  list.reduce<Found | undefined>(
    (least, one) => (least === undefined || order(one, least) < 0 ? one : least),
    undefined,
  );
