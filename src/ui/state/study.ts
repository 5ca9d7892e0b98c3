import { create } from 'zustand';
import type { LonLat } from '../../geo/index.ts';
import type { Pins } from '../../study/index.ts';
import type { StudyAnswer } from '../../workers/index.ts';

/** The study on the desk. */
export interface StudyState {
  /** The point under study, wherever the finger has it. */
  readonly point: LonLat | null;
  /** The patient point, wherever the finger has it; null for the end of the descent. */
  readonly patient: LonLat | null;
  /** Spots and marks that somebody fixed, as the newest question has them. */
  readonly pins: Pins;
  /** Counts up when the map should bring the point into view: it came from a list or the address bar, not from a finger. */
  readonly look: number;
  readonly answer: StudyAnswer | null;
  /** What the ground alone says of a newer point than the answer's, while its layouts are still sought; null where nothing is newer. */
  readonly ahead: StudyAnswer | null;
  /** The answer belongs to an earlier question, and has for longer than an eye forgives. */
  readonly stale: boolean;
  readonly working: boolean;
  /** Why there is no study at the point; null when there is one or none was asked. */
  readonly problem: string | null;
}

export const emptyStudy: StudyState = {
  point: null,
  patient: null,
  pins: {},
  look: 0,
  answer: null,
  ahead: null,
  stale: false,
  working: false,
  problem: null,
};

export const useStudy = create<StudyState>()(() => emptyStudy);

/** What is known of the newest point: whole, or its ground ahead of the rest. */
export const newestAnswer = ({ ahead, answer }: StudyState): StudyAnswer | null => ahead ?? answer;

/** There is no study yet, and nothing that speaks against one. */
export const isAwaited = ({ answer, problem }: StudyState): boolean => answer === null && problem === null;
