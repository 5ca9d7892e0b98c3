import { create } from 'zustand';
import { defaultAngleRule } from '../book/index.ts';
import type { LonLat } from '../geo/index.ts';
import type { UnitSystem } from '../units/index.ts';
import type { DistrictView, StudyAnswer } from '../workers/index.ts';
import type { Place } from './address.ts';

/** Light as the system has it, or as the person chose. */
export type LightChoice = 'system' | 'day' | 'night';

/** The district on the desk. */
export interface OpenDistrict {
  readonly name: string;
  /** True for the demo: the screen says that it is made up. */
  readonly invented: boolean;
  readonly view: DistrictView;
}

export interface DeskState {
  readonly units: UnitSystem;
  readonly light: LightChoice;
  readonly ruleName: string;
  readonly place: Place;
  readonly district: OpenDistrict | null;
  /** What is being read, as a sentence; null when nothing is. */
  readonly opening: string | null;
  /** Why the last opening failed and what was kept; null when it did not. */
  readonly openProblem: string | null;
  /** Files dropped on the map, for the form to take; null once it has. */
  readonly dropped: readonly File[] | null;
  /** The point under study, wherever the finger has it. */
  readonly point: LonLat | null;
  /** Counts up when the map should bring the point into view: it came from a list or the address bar, not from a finger. */
  readonly look: number;
  readonly answer: StudyAnswer | null;
  /** The answer belongs to an earlier place of the point, and has for longer than an eye forgives. */
  readonly stale: boolean;
  readonly working: boolean;
  /** Why there is no study at the point; null when there is one or none was asked. */
  readonly problem: string | null;
  /** Why the map cannot be drawn; null when it can. */
  readonly mapProblem: string | null;
}

export const emptyDesk: DeskState = {
  units: 'us',
  light: 'system',
  ruleName: defaultAngleRule.name,
  place: { screen: 'start' },
  district: null,
  opening: null,
  openProblem: null,
  dropped: null,
  point: null,
  look: 0,
  answer: null,
  stale: false,
  working: false,
  problem: null,
  mapProblem: null,
};

/** The desk as the screens see it; only `desk.ts` writes it. */
export const useDesk = create<DeskState>()(() => emptyDesk);
