import { create } from 'zustand';
import type { LonLat } from '../../geo/index.ts';
import type { Pins, Study } from '../../study/index.ts';
import type { DraftAnswer, StudyAnswer } from '../../workers/index.ts';

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
  /**
   * A newer point than the answer's, while a hand moves it: to be looked at and no more, since a better layout may come. Null where
   * nothing is newer.
   */
  readonly draft: DraftAnswer | null;
  /** What is shown belongs to an earlier question, and has for longer than an eye forgives. */
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
  draft: null,
  stale: false,
  working: false,
  problem: null,
};

export const useStudy = create<StudyState>()(() => emptyStudy);

/** What a screen shows: the draft of a point that moves, else the study. Nothing that is kept, printed or signed is taken from here. */
export const shownStudy = ({ draft, answer }: StudyState): Study | null => draft?.draft ?? answer?.study ?? null;

/** There is no study yet, and nothing that speaks against one. */
export const isAwaited = ({ answer, problem }: StudyState): boolean => answer === null && problem === null;
