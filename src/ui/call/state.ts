import type { LonLat } from '../../geo/index.ts';
import type { CallPack, KeptState, ShellState, Weather } from '../../io/offline/index.ts';
import type { Study } from '../../study/index.ts';
import type { AroundAnswer } from '../../workers/call/index.ts';
import type { KeepProgress } from './keep.ts';
import type { HoldWords } from './plan/index.ts';
import type { Hit } from './search/index.ts';

/** What the screen is about. */
export type Place =
  | { readonly kind: 'start' }
  | { readonly kind: 'site'; readonly id: string }
  | { readonly kind: 'around'; readonly at: LonLat; readonly errorM: number }
  /** A roadside that nobody surveyed, worked out on the spot; `words` say where it is. */
  | { readonly kind: 'spot'; readonly at: LonLat; readonly sideAzimuthDeg: number; readonly words: string };

export interface Circumstances {
  readonly weather: Weather;
  readonly night: boolean;
  readonly wind: boolean;
}

export interface CallState {
  readonly online: boolean;
  readonly shell: ShellState | null;
  readonly kept: KeptState | null;
  /** What can be searched: kept, or just read from the network. */
  readonly pack: CallPack | null;
  /** True until it is known whether anything is kept. */
  readonly loading: boolean;
  readonly keeping: KeepProgress | null;
  /** The book has edits that what is kept does not have yet. */
  readonly bookBehind: boolean;
  /** What is shown was made from an older state of the district than there is by now. */
  readonly newer: boolean;
  /** Why nothing could be kept, one sentence. */
  readonly keepProblem: string | null;
  readonly place: Place;
  readonly circumstances: Circumstances;
  readonly study: Study | null;
  /** The study on the screen is under other circumstances than those chosen, or of another place. */
  readonly stale: boolean;
  readonly working: boolean;
  readonly problem: string | null;
  /** When the study on the screen was kept, milliseconds since 1970; null where it was just worked out. */
  readonly studyKeptAtMs: number | null;
  /** How the anchors hold in each weather, for the switch; null where it is not known. */
  readonly holds: Readonly<Record<Weather, HoldWords | null>>;
  readonly around: AroundAnswer | null;
  readonly query: string;
  readonly hits: readonly Hit[];
  /** The device is being asked where it is. */
  readonly locating: boolean;
  readonly light: 'night' | 'day';
}

const noHolds: CallState['holds'] = { dry: null, wet: null, ice: null };

export const emptyCall: CallState = {
  online: true,
  shell: null,
  kept: null,
  pack: null,
  loading: true,
  keeping: null,
  bookBehind: false,
  newer: false,
  keepProblem: null,
  place: { kind: 'start' },
  circumstances: { weather: 'dry', night: false, wind: false },
  study: null,
  stale: false,
  working: false,
  problem: null,
  studyKeptAtMs: null,
  holds: noHolds,
  around: null,
  query: '',
  hits: [],
  locating: false,
  light: 'night',
};

/** What belongs to one place, cleared when another is opened. */
export const nothingShown = {
  study: null,
  stale: false,
  working: false,
  problem: null,
  studyKeptAtMs: null,
  holds: noHolds,
  around: null,
} as const satisfies Partial<CallState>;

/** A value that a screen follows. */
export interface Store<S> {
  get(): S;
  set(change: Partial<S>): void;
  follow(listener: () => void): () => void;
}

export function createStore<S extends object>(first: S): Store<S> {
  let state = first;
  const listeners = new Set<() => void>();
  return {
    get: () => state,
    set(change) {
      state = { ...state, ...change };
      for (const listener of listeners) listener();
    },
    follow(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}
