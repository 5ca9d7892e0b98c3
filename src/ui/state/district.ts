import { create } from 'zustand';
import type { DistrictView } from '../../workers/index.ts';

/** The district on the desk. */
export interface OpenDistrict {
  readonly name: string;
  /** True for the demo: the screen says that it is made up. */
  readonly invented: boolean;
  readonly view: DistrictView;
}

export interface DistrictState {
  readonly district: OpenDistrict | null;
  /** What is being read, as a sentence; null when nothing is. */
  readonly opening: string | null;
  /** The book on the desk is being changed for another one whose ground is not there yet: its sites are shown once it is. */
  readonly turning: boolean;
  /** Why the last opening failed and what was kept; null when it did not. */
  readonly problem: string | null;
  /** Files dropped on the map, for the form to take; null once it has. */
  readonly dropped: readonly File[] | null;
  /** Why the map cannot be drawn; null when it can. */
  readonly mapProblem: string | null;
}

export const useDistrict = create<DistrictState>()(() => ({
  district: null,
  opening: null,
  turning: false,
  problem: null,
  dropped: null,
  mapProblem: null,
}));
