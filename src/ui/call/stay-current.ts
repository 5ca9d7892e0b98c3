import { allStudies, type KeptStore, keptState } from '../../io/offline/index.ts';
import { sentenceOf } from '../sentence-of.ts';
import { keepDistrict } from './keep.ts';
import { type DistrictHere, districtState, stateNow } from './source.ts';
import type { CallState, createStore } from './state.ts';
import type { CallWorker } from './worker.ts';

/** The district is looked at again no sooner than this, milliseconds. */
const LOOK_LEAST_MS = 60_000;

/** What stands, and what to do, where the program fails. */
export const KEPT_IS_WHOLE = 'What is kept is whole. Reload the page.';

/** What keeping works with. */
export interface Current {
  readonly store: ReturnType<typeof createStore<CallState>>;
  readonly worker: CallWorker;
  readonly disk: KeptStore;
  /** The district read anew. */
  district(): Promise<DistrictHere>;
  /** The sites are known for the first time. */
  outlined(): void;
  /** Resolves when nothing more urgent is asked. */
  turn(): Promise<void>;
}

/** Keeps the district of this device for the time without a network, and looks whether what is shown is still its state. */
export function stayCurrent({ store: { get, set }, worker, disk, district, outlined, turn }: Current) {
  /** Keeps the district where what is kept is not of its present state; true where it is by then. */
  async function keep(): Promise<boolean> {
    let found: DistrictHere;
    try {
      found = await district();
    } catch (error) {
      set({ online: false, keepProblem: get().pack ? null : sentenceOf(error, KEPT_IS_WHOLE) });
      return false;
    }
    const state = await districtState(found);
    set({ online: state !== null && navigator.onLine, bookBehind: found.behind });
    if (state === null) return false;
    const { kept } = get();
    const fresh = kept?.pack?.madeFrom === state && allStudies(kept.pack, kept.studies) && !kept.lost;
    if (fresh) return true;
    set({ keepProblem: null, keeping: { done: 0, of: 0 } });
    try {
      const listener = {
        outlined: (pack: CallState['pack']) => {
          if (get().pack) return;
          set({ pack });
          outlined();
        },
        progress: (keeping: CallState['keeping']) => set({ keeping }),
        turn,
      };
      const pack = await keepDistrict(worker, found, state, listener, new AbortController().signal);
      // A plan on the screen that was kept of an older state stays, and is told to be one.
      const older = kept?.pack && kept.pack.madeFrom !== state && get().place.kind === 'site' && get().study;
      if (pack) set({ pack, newer: Boolean(older) });
      set({ keeping: null, kept: await keptState(disk, localStorage) });
      return pack !== null;
    } catch (error) {
      const before = get().kept?.pack ? ' What was kept before stays.' : '';
      set({ keeping: null, keepProblem: `${sentenceOf(error, KEPT_IS_WHOLE)}${before}` });
      return false;
    }
  }

  let lookedAtMs = 0;

  /** Looks whether there is a newer state of the district than the one shown; says so, and changes nothing. */
  async function look(): Promise<void> {
    const { kept, keeping, pack } = get();
    const now = Date.now();
    if (keeping || !navigator.onLine || document.visibilityState === 'hidden' || now - lookedAtMs < LOOK_LEAST_MS)
      return;
    lookedAtMs = now;
    const shown = kept?.pack?.madeFrom ?? pack?.madeFrom;
    const state = await stateNow().catch(() => null);
    if (state !== null && shown !== undefined && get().keeping === null) set({ newer: state !== shown });
  }

  return { keep, look };
}
