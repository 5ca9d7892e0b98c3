import { create } from 'zustand';
import type { WhyCase } from '../study/why.ts';

/** What hands chose on the study's drawings. */
export interface SketchState {
  /** The layout drawn; null for the first by rank. */
  readonly layoutId: string | null;
  /** What stands above the profile. */
  readonly upper: 'map' | 'plan';
  /** The number whose reason stands in the margin. */
  readonly why: WhyCase | null;
  /** Metres from the edge of the station shown on both drawings. */
  readonly hairM: number | null;
}

export const useSketch = create<SketchState>()(() => ({ layoutId: null, upper: 'map', why: null, hairM: null }));
