import { type BlockHeights, SAMPLE_BYTES } from '../decode/index.ts';
import type { ByteSource, DecodePool } from '../ports.ts';
import { abortable } from './abortable.ts';
import type { RasterImage } from './raster-image.ts';
import { type ByteRange, type JoinedRange, joinRanges, readJoined } from './read-ranges.ts';

/** Unpacked blocks of one image, by their index (row-major); null where the file leaves a block out. */
export type Block = BlockHeights | null;

/** Unpacked blocks kept for the next read. */
export interface BlockStore {
  /**
   * Hands every wanted block to `use`, once each, in any order; blocks at hand are not read again. Rejects with the
   * signal's reason when it is aborted; a block that another read waits for is then still fetched.
   */
  each(wanted: readonly number[], use: (index: number, block: Block) => void, signal?: AbortSignal): Promise<void>;
}

/** A fetch that brings one or more blocks; given up when nobody waits for any of them. */
interface Batch {
  readonly abort: AbortController;
  waiting: number;
}

interface Entry {
  readonly block: Promise<Block>;
  readonly batch: Batch;
  bytes: number;
}

/** Ranges under way at once: enough to hide round trips, few enough for a browser's six connections to a host. */
const AT_ONCE = 4;

/** Keeps up to about `limitBytes` of unpacked blocks of an image, the least recently used going first. */
export function blockStore(source: ByteSource, image: RasterImage, pool: DecodePool, limitBytes: number): BlockStore {
  const entries = new Map<number, Entry>();
  let held = 0;
  let running = 0;
  const queue: (() => void)[] = [];

  async function inTurn<T>(run: () => Promise<T>): Promise<T> {
    if (running >= AT_ONCE) await new Promise<void>((go) => queue.push(go));
    running++;
    try {
      return await run();
    } finally {
      running--;
      queue.shift()?.();
    }
  }

  function forget(index: number, entry: Entry): void {
    if (entries.get(index) !== entry) return;
    entries.delete(index);
    held -= entry.bytes;
  }

  function keep(index: number, entry: Entry, block: Block): void {
    if (entries.get(index) !== entry) return;
    entry.bytes = block ? block.byteLength : SAMPLE_BYTES[image.format.sample];
    held += entry.bytes;
    for (const [oldest, other] of entries) {
      if (held <= limitBytes) break;
      if (other !== entry && other.bytes > 0) forget(oldest, other);
    }
  }

  /** Starts the reads of blocks that are not at hand, whose places are known. */
  function start(missing: readonly number[], places: ReadonlyMap<number, ByteRange>): void {
    const present = missing.filter((index) => places.get(index)!.length > 0);
    for (const index of missing) {
      if (places.get(index)!.length === 0) add(index, Promise.resolve(null), newBatch());
    }
    const ranges = present.map((index) => places.get(index)!);
    for (const joined of joinRanges(ranges)) {
      const batch = newBatch();
      const parts = inTurn(() => fetched(joined, ranges, batch));
      joined.members.forEach((member, k) => {
        const index = present[member];
        add(
          index,
          parts.then((buffers) => decoded(index, buffers[k], batch)),
          batch,
        );
      });
    }
  }

  function fetched(joined: JoinedRange, ranges: readonly ByteRange[], batch: Batch) {
    batch.abort.signal.throwIfAborted();
    return readJoined(source, joined, ranges, batch.abort.signal);
  }

  function decoded(index: number, packed: ArrayBuffer, batch: Batch): Promise<Block> {
    const height = image.rowsOf(Math.floor(index / image.blocksAcross));
    return pool.decode({ ...image.format, height }, packed, batch.abort.signal);
  }

  function add(index: number, block: Promise<Block>, batch: Batch): void {
    const entry: Entry = { block, batch, bytes: 0 };
    entries.set(index, entry);
    // A failure is not remembered: the next read tries again.
    block.then(
      (value) => keep(index, entry, value),
      () => forget(index, entry),
    );
  }

  /** Ends what a batch has not brought yet; nobody who comes later may meet its remains. */
  function giveUp(batch: Batch): void {
    for (const [index, entry] of [...entries]) if (entry.batch === batch && entry.bytes === 0) forget(index, entry);
    batch.abort.abort();
  }

  return {
    async each(wanted, use, signal) {
      signal?.throwIfAborted();
      const places = new Map<number, ByteRange>();
      const unplaced = (): number[] => wanted.filter((index) => !entries.has(index) && !places.has(index));
      // A block at hand may go while the places of others are looked up: ask until every one is at hand or placed.
      for (let next = unplaced(); next.length > 0; next = unplaced()) {
        await Promise.all(next.map(async (index) => places.set(index, await image.rangeOf(index))));
      }
      signal?.throwIfAborted();
      // From here to the waits nothing may yield, so that no entry goes in between.
      start(
        wanted.filter((index) => !entries.has(index)),
        places,
      );
      const batches = new Set<Batch>();
      const waits = wanted.map((index) => {
        const entry = entries.get(index)!;
        entries.delete(index);
        entries.set(index, entry);
        batches.add(entry.batch);
        return entry.block.then((block) => use(index, block));
      });
      for (const batch of batches) batch.waiting++;
      try {
        await abortable(Promise.all(waits), signal);
      } finally {
        for (const batch of batches) if (--batch.waiting === 0) giveUp(batch);
      }
    },
  };
}

const newBatch = (): Batch => ({ abort: new AbortController(), waiting: 0 });
