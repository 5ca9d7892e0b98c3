import { type Means, ropesBy } from './means.ts';

const ROPE_TOLERANCE_M = 1e-9;

/** Rope that main, belay and haul line must have, metres; haul 0 where the system is built in. One rope a line. */
export interface LineNeeds {
  main: number;
  belay: number;
  haul: number;
}

/** 0 at hand when rigging ends, 1 fits by the first alarm, 2 by mutual aid, else 3 + whole metres short. */
export function kitClass(
  needs: LineNeeds,
  rigRopesM: readonly number[],
  { alarmRopesM, allRopesM }: Pick<Means, 'alarmRopesM' | 'allRopesM'>,
): number {
  if (shortM(needs, rigRopesM) <= 0) return 0;
  if (shortM(needs, alarmRopesM) <= 0) return 1;
  const short = shortM(needs, allRopesM);
  return short <= 0 ? 2 : 3 + Math.ceil(short - ROPE_TOLERANCE_M);
}

/** The arrival with which one rope a line is there, minutes; null where it never is. */
export function arrivalThatFits(needs: LineNeeds, means: Pick<Means, 'kits' | 'ropesAfter'>): number | null {
  for (const { atMin } of means.kits) if (shortM(needs, ropesBy(means, atMin)) <= 0) return atMin;
  return null;
}

/** What is missing in all, metres: longest ropes to longest needs. */
function shortM({ main, belay, haul }: LineNeeds, ropesM: readonly number[]): number {
  const most = Math.max(main, belay, haul);
  const least = Math.min(main, belay, haul);
  const middle = main + belay + haul - most - least;
  return missing(most, ropesM[0]) + missing(middle, ropesM[1]) + missing(least, ropesM[2]);
}

function missing(needM: number, ropeM: number | undefined): number {
  const short = needM - (ropeM ?? 0);
  return short > ROPE_TOLERANCE_M ? short : 0;
}

/**
 * The longest rope left for a throw when one or two needs, metres, have each a rope of their own (0 for no second need);
 * where they find none, the longest go to them all the same.
 *
 * @param ropesM longest first
 */
export function spareRope(needM: number, otherM: number, ropesM: readonly number[]): number {
  const most = Math.max(needM, otherM);
  const least = Math.min(needM, otherM);
  const needs = otherM > 0 ? 2 : 1;
  for (let left = 0; left < ropesM.length && ropesM.length > needs; left++) {
    const first = ropesM[left === 0 ? 1 : 0];
    const second = ropesM[left <= 1 ? 2 : 1];
    if (first + ROPE_TOLERANCE_M >= most && (needs === 1 || second + ROPE_TOLERANCE_M >= least)) return ropesM[left];
  }
  return ropesM[needs] ?? 0;
}
