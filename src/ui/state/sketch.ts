import { create } from 'zustand';
import type { WhyCase } from '../study/why.ts';

/** What hands chose on the study's drawings. */
export interface SketchState {
  /** The layout drawn; null for the first by rank. */
  readonly layoutId: string | null;
  /** What somebody wants above the profile; null where nobody chose. */
  readonly upper: 'map' | 'plan' | null;
  /** The number whose reason stands in the margin. */
  readonly why: WhyCase | null;
  /** Metres from the edge of the station shown on both drawings. */
  readonly hairM: number | null;
}

export const useSketch = create<SketchState>()(() => ({ layoutId: null, upper: null, why: null, hairM: null }));
