import { allStudies, cacheStore, keptState } from '../../io/offline/index.ts';
import { keepDistrict } from './keep.ts';
import { districtHere, districtState } from './source.ts';
import { callWorker } from './worker.ts';

/** Hands must have been off the desk this long, milliseconds: keeping computes, and work goes first. */
const IDLE_MS = 45_000;

/**
 * Keeps the district for use without a network from the desk's page too, once hands have been off it for a while, and stops as soon as
 * they come back: one visit is enough for a device to work in the field. Says nothing: the call view tells what is kept.
 */
export function keepInBackground(): void {
  let timer: ReturnType<typeof setTimeout>;
  let abort = new AbortController();
  const worker = callWorker();
  const run = async (): Promise<void> => {
    if (document.visibilityState === 'hidden' || !navigator.onLine) return;
    const here = await districtHere();
    const state = await districtState(here);
    if (state === null) return;
    const { pack, studies, lost } = await keptState(cacheStore(), localStorage);
    if (pack?.madeFrom === state && allStudies(pack, studies) && !lost) return;
    const quiet = { outlined: () => {}, progress: () => {}, turn: async () => {} };
    await keepDistrict(worker, here, state, quiet, abort.signal);
  };
  const wait = (): void => {
    clearTimeout(timer);
    abort.abort();
    abort = new AbortController();
    // A failure is told in the call view, where somebody can do something about it.
    timer = setTimeout(() => void run().catch(() => {}), IDLE_MS);
  };
  for (const sign of ['pointerdown', 'keydown', 'wheel']) addEventListener(sign, wait, { passive: true });
  wait();
}
