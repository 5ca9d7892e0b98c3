import { type BlockFormat, type BlockHeights, type DecodePool, decodeHere } from '../io/index.ts';
import { UserError } from '../units/index.ts';
import { connect, type WorkerClient } from './connect.ts';
import type { DecodeFunctions } from './decode-functions.ts';
import type { Port } from './messages.ts';
import { transferring } from './transfer.ts';

/** A running worker as the pool sees it. */
export interface PoolWorker {
  readonly port: Port;
  /** Told while the worker has something to do, so that an idle one need not keep a process alive. */
  busy(is: boolean): void;
  stop(): void;
}

/** Starts a worker; `lost` is to be called once if it stops or breaks by itself. */
export type StartWorker = (lost: () => void) => PoolWorker;

/** Blocks under way in one worker: one that it works on and one that waits at its door. */
const AT_DOOR = 2;
const LOST = 'A decoding worker stopped by itself (out of memory?); close other files and try again.';

interface Job {
  readonly format: BlockFormat;
  readonly packed: ArrayBuffer;
  readonly signal: AbortSignal | undefined;
  resolve(heights: BlockHeights): void;
  reject(reason: unknown): void;
}

interface Slot {
  readonly client: WorkerClient<DecodeFunctions>;
  readonly worker: PoolWorker;
  running: number;
  ready: boolean;
}

/**
 * A pool of `size` decoding workers, started at the first block. Every block is answered: where a worker is lost, what it
 * had in hand is rejected with a sentence and a new one takes its place; where workers cannot be started at all, blocks are
 * decoded on the caller's thread.
 */
export function decodePool(start: StartWorker, size: number): DecodePool {
  const queue: Job[] = [];
  const slots = new Set<Slot>();
  let canStart = true;
  let closed = false;

  function open(): void {
    let slot: Slot | null = null;
    let gone = false;
    const lost = (): void => {
      gone = true;
      if (!slot) return;
      slots.delete(slot);
      if (!slot.ready) canStart = false;
      slot.client.fail(LOST);
      slot.worker.stop();
      serve();
    };
    try {
      const worker = start(lost);
      slot = { worker, client: connect<DecodeFunctions>(worker.port), running: 0, ready: false };
    } catch {
      canStart = false;
      return;
    }
    if (gone) {
      canStart = false;
      return;
    }
    const opened = slot;
    slots.add(opened);
    opened.worker.busy(true);
    opened.client.call('ready', null).then(
      () => {
        opened.ready = true;
        opened.worker.busy(opened.running > 0);
        serve();
      },
      // Not started: `lost` has been called and sees to the rest.
      () => {},
    );
  }

  /** Hands waiting blocks to whoever is free, and starts as many workers as there are blocks for. */
  function serve(): void {
    dropAborted();
    const inHand = [...slots].reduce((sum, slot) => sum + slot.running, 0);
    while (canStart && slots.size < Math.min(size, queue.length + inHand)) open();
    if (!canStart && slots.size === 0) {
      for (const { format, packed, signal, resolve, reject } of queue.splice(0)) {
        decodeHere.decode(format, packed, signal).then(resolve, reject);
      }
      return;
    }
    for (;;) {
      const slot = [...slots].filter((one) => one.ready).sort((a, b) => a.running - b.running)[0];
      if (!slot || slot.running >= AT_DOOR) return;
      const job = queue.shift();
      if (!job) return;
      void run(slot, job);
    }
  }

  function dropAborted(): void {
    for (let i = queue.length - 1; i >= 0; i--) {
      const { signal, reject } = queue[i];
      if (!signal?.aborted) continue;
      queue.splice(i, 1);
      reject(signal.reason);
    }
  }

  async function run(slot: Slot, { format, packed, resolve, reject }: Job): Promise<void> {
    slot.running++;
    slot.worker.busy(true);
    try {
      resolve(await slot.client.call('decode', transferring({ format, packed }, [packed])));
    } catch (error) {
      reject(error);
    }
    slot.running--;
    slot.worker.busy(slot.running > 0);
    serve();
  }

  return {
    decode(format, packed, signal) {
      if (closed)
        return Promise.reject(new UserError('pool-closed', 'The decoding workers were closed; open the file again.'));
      return new Promise((resolve, reject) => {
        queue.push({ format, packed, signal, resolve, reject });
        serve();
      });
    },
    async close() {
      closed = true;
      const sentence = 'Reading was given up, because the file was closed.';
      for (const job of queue.splice(0)) job.reject(new UserError('pool-closed', sentence));
      for (const { client, worker } of slots) {
        client.fail(sentence);
        worker.stop();
      }
      slots.clear();
    },
  };
}
