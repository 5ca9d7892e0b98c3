import { carryWay } from './carry-way.ts';
import { lowerWay } from './lower-way.ts';
import { raiseWay } from './raise-way.ts';
import type { Way, WayQuestion } from './way-types.ts';

/** Ways to end the job, the leading one first: those that rope and people allow before others, then by minutes. */
export function findWays(question: WayQuestion): Way[] {
  const { raise, crossings, lowerRunM, carryRunM } = question;
  const ways: Way[] = raise ? [raiseWay(raise)] : [];
  if (lowerRunM !== null) ways.push(...crossings.map((to) => lowerWay(question, to, lowerRunM)));
  const carried = carryRunM === null ? null : carryWay(question, carryRunM);
  if (carried) ways.push(carried);
  return ways.sort(compareWays);
}

/**
 * Order of two ways: allowed by rope and people, ends where a vehicle comes, fewer minutes, fewer people, raise before lower
 * before carry.
 */
export function compareWays(a: Way, b: Way): number {
  return (
    Number(b.allowed) - Number(a.allowed) ||
    Number(b.endsAtVehicle) - Number(a.endsAtVehicle) ||
    compare(a.minutes ?? Number.POSITIVE_INFINITY, b.minutes ?? Number.POSITIVE_INFINITY) ||
    a.people.count - b.people.count ||
    kinds.indexOf(a.kind) - kinds.indexOf(b.kind)
  );
}

const kinds = ['raise', 'lower', 'carry'];

const compare = (a: number, b: number): number => (a < b ? -1 : a > b ? 1 : 0);
