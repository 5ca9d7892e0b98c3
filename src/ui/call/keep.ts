import {
  type CallPack,
  type CallSite,
  cacheStore,
  districtOf,
  forgetKept,
  keptWeathers,
  noteKept,
  ownName,
  readPack,
} from '../../io/offline/index.ts';
import { UserError } from '../../units/index.ts';
import { keepPublished } from './keep-published.ts';
import type { DistrictHere } from './source.ts';
import type { CallWorker } from './worker.ts';

export interface KeepProgress {
  readonly done: number;
  readonly of: number;
}

/** Told while a district is kept. `pack` is what can be searched meanwhile. */
export interface KeepListener {
  /** The sites are known; none is kept anew yet. */
  outlined(pack: CallPack): void;
  progress(progress: KeepProgress): void;
  /** Resolves when nothing more urgent is asked: a person's question goes first. */
  turn(): Promise<void>;
}

/** One window at a time keeps; the others find the work done. */
const LOCK = 'brinkbook-keep';

/**
 * Keeps a district for use without a network: every site's studies and the elevation that they read, the pack last. Null where another
 * window is at it. Rejects with one sentence; what was kept before stays then.
 */
export async function keepDistrict(
  worker: CallWorker,
  { source, published, from, keepOwn }: DistrictHere,
  state: string,
  listener: KeepListener,
  signal: AbortSignal,
): Promise<CallPack | null> {
  return alone(async () => {
    const disk = cacheStore();
    // Ids of two districts may be the same: nothing of the one may stand for the other.
    const before = await readPack(disk).catch(() => null);
    if (before && districtOf(before) !== from) await forgetKept(disk, localStorage);
    const keeps = 'caches' in globalThis;
    const opened = await worker.open(source, keeps);
    const groundHere = source.files.elevation.every((origin) => typeof origin !== 'string');
    const pack = published?.publication.pack ?? opened.pack;
    const whole = (sites: readonly CallSite[]): CallPack => ({
      ...{ ...pack, sites, from, madeFrom: state, madeAtMs: Date.now() },
      ...(groundHere && { groundHere }),
    });
    listener.outlined(whole(pack.sites));
    if (!keeps) {
      throw new UserError(
        'no-storage',
        'Nothing can be kept on this device at an address that is not https: plans are read over the network each time.',
      );
    }
    const kept: CallSite[] = [];
    const of = pack.sites.length * keptWeathers.length;
    let done = 0;
    for (const { id } of pack.sites) {
      for (const weather of keptWeathers) {
        await listener.turn();
        signal.throwIfAborted();
        const site = published
          ? await keepPublished(worker, source, published, { id, weather })
          : await worker.ask('keepSite', { id, weather }, source);
        if (weather === 'dry') kept.push(site);
        listener.progress({ done: ++done, of });
      }
    }
    const finished = whole(kept);
    await keepOwn?.();
    await worker.ask('finish', finished, source);
    noteKept(localStorage, finished);
    return finished;
  });
}

/** Runs the keeping where no other window is at it, else null. On an address that is not https a browser has no locks, and keeps nothing. */
async function alone<T>(run: () => Promise<T>): Promise<T | null> {
  const { locks } = navigator as { locks?: LockManager };
  if (!locks) return run();
  return locks.request(ownName(LOCK), { ifAvailable: true }, (lock) => (lock ? run() : null));
}
