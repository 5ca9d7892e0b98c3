import type { RoadTraits } from '../../road/index.ts';
import { type ClosureKind, closureKind } from '../closure.ts';
import { laneCount } from '../lanes.ts';

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

/** Lanes of a road, as a search asks for them: half the travelled way, and the width of a lane, metres. */
export interface LaneGrid {
  readonly halfM: number;
  readonly laneM: number;
}

export const laneGrid = (traits: RoadTraits): LaneGrid => ({
  halfM: traits.carriageway.valueM / 2,
  laneM: traits.carriageway.valueM / laneCount(traits),
});

/** Lanes, as bits, that a stretch across the road reaches well into; offsets from the middle of the travelled way, metres. */
export function bitsBetween({ halfM, laneM }: LaneGrid, leastM: number, mostM: number): number {
  const from = Math.max(-halfM, leastM);
  const to = Math.min(halfM, mostM);
  if (!(to - from > WELL_M)) return 0;
  const first = Math.floor((from + halfM + WELL_M) / laneM);
  const last = Math.ceil((to + halfM - WELL_M) / laneM) - 1;
  return (2 << last) - (1 << first);
}

const WELL_M = 0.01;
