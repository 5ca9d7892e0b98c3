import type { RoadTraits } from '../../road/index.ts';
import { type ClosureKind, closureKind } from '../closure.ts';

/** Roles of the least crew to raise beside the haul team; one more holds traffic where it passes in turn on one lane. */
export const LEAST_OTHERS = 8;

/** How traffic passes a layout that takes lanes (bits), and what its least crew is beside the haul team. */
export function trafficPast(traits: RoadTraits, lanesTaken: number): { closure: ClosureKind; othersCount: number } {
  const closure = closureKind(traits, bitCount(lanesTaken));
  return { closure, othersCount: LEAST_OTHERS + (closure === 'one lane in turn' ? 1 : 0) };
}

export const laneBits = (taken: readonly number[]): number => taken.reduce((bits, lane) => bits | (1 << lane), 0);

export function bitCount(bits: number): number {
  let count = 0;
  for (let rest = bits; rest > 0; rest &= rest - 1) count++;
  return count;
}
