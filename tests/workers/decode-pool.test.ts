import { pathToFileURL } from 'node:url';
import { MessageChannel } from 'node:worker_threads';
import { deflateSync } from 'node:zlib';
import { afterEach, beforeAll, describe, expect, it } from 'vitest';
import { bundle } from '../../config/bundle.mjs';
import type { BlockFormat, DecodePool } from '../../src/io/index.ts';
import { UserError } from '../../src/units/index.ts';
import { decodeFunctions } from '../../src/workers/decode-functions.ts';
import { decodePool, type StartWorker } from '../../src/workers/decode-pool.ts';
import type { Port } from '../../src/workers/messages.ts';
import { nodeDecodePool } from '../../src/workers/node/index.ts';
import { serve } from '../../src/workers/serve.ts';

const format: BlockFormat = {
  compression: 8,
  predictor: 1,
  sample: 'float32',
  littleEndian: true,
  width: 64,
  height: 64,
  lercPacking: 0,
  noData: -9999,
  scale: 1,
  offset: 0,
};

const block = (value: number): ArrayBuffer =>
  new Uint8Array(deflateSync(new Uint8Array(new Float32Array(64 * 64).fill(value).buffer))).buffer;

const pools: DecodePool[] = [];
const kept = (pool: DecodePool): DecodePool => {
  pools.push(pool);
  return pool;
};
afterEach(async () => {
  for (const pool of pools.splice(0)) await pool.close();
});

describe('decoding threads under Node', () => {
  let module: URL;
  beforeAll(async () => {
    module = pathToFileURL(await bundle('src/workers/node/decode.ts'));
  });

  it('decode many blocks, each its own, and hand buffers over in both directions', async () => {
    const pool = kept(nodeDecodePool(2, module));
    const packed = Array.from({ length: 40 }, (_, i) => block(100 + i));
    const all = await Promise.all(packed.map((bytes) => pool.decode(format, bytes)));
    all.forEach((heights, i) => {
      expect(heights).toBeInstanceOf(Float32Array);
      expect([heights.length, heights[0], heights[4095]]).toEqual([4096, 100 + i, 100 + i]);
    });
    // Handed over, not copied: what was sent is empty here.
    expect(packed.map((bytes) => bytes.byteLength)).toEqual(new Array(40).fill(0));
  });

  it('answer a broken block with its sentence and go on', async () => {
    const pool = kept(nodeDecodePool(1, module));
    const broken = pool.decode(format, new Uint8Array([1, 2, 3, 4]).buffer);
    const fine = pool.decode(format, block(7));
    await expect(broken).rejects.toBeInstanceOf(UserError);
    await expect(broken).rejects.toThrow(/copy or download the file again/);
    expect((await fine)[0]).toBe(7);
  });

  it('fall back to the own thread where the worker module is missing', async () => {
    const pool = kept(nodeDecodePool(2, new URL('./no-such-module.mjs', module)));
    const all = await Promise.all([1, 2, 3, 4, 5].map((value) => pool.decode(format, block(value))));
    expect(all.map((heights) => heights[9])).toEqual([1, 2, 3, 4, 5]);
  });
});

/** A worker made of a message channel on this thread, which can be killed; `deaf` ones take blocks and never answer. */
function paperWorkers(deaf = false) {
  const started: { lost(): void; stopped: boolean; asked: number; busy: boolean; sent: unknown[] }[] = [];
  const start: StartWorker = (lost) => {
    const { port1, port2 } = new MessageChannel();
    const worker = { lost, stopped: false, asked: 0, busy: false, sent: [] as unknown[] };
    started.push(worker);
    const portOf = (port: typeof port1, note: (message: unknown, transfer: unknown) => void): Port => ({
      postMessage: (message, transfer) => {
        note(message, transfer);
        port.postMessage(message, transfer as ArrayBuffer[]);
      },
      addEventListener: (_, listener) => {
        port.on('message', (data) => listener({ data } as MessageEvent));
      },
    });
    const never = new Promise<never>(() => {});
    serve(
      {
        ...decodeFunctions,
        decode: (request: Parameters<typeof decodeFunctions.decode>[0]) => {
          worker.asked++;
          return deaf ? never : decodeFunctions.decode(request);
        },
      },
      portOf(port2, (_, transfer) => worker.sent.push(transfer)),
    );
    return {
      port: portOf(port1, () => {}),
      busy: (is) => {
        worker.busy = is;
      },
      stop: () => {
        worker.stopped = true;
        port1.close();
      },
    };
  };
  return { started, start };
}

describe('the decoding pool', () => {
  it('rejects what a lost worker had in hand, serves what waited by a new one', async () => {
    const { started, start } = paperWorkers(true);
    const pool = kept(decodePool(start, 1));
    const inHand = pool.decode(format, block(1));
    const alsoInHand = pool.decode(format, block(2));
    const settled = Promise.allSettled([inHand, alsoInHand]);
    await expect.poll(() => started[0]?.asked).toBe(2);
    started[0].lost();
    for (const result of await settled) {
      expect(result.status).toBe('rejected');
      expect((result as PromiseRejectedResult).reason).toBeInstanceOf(UserError);
      expect(String((result as PromiseRejectedResult).reason)).toMatch(/decoding worker stopped by itself/);
    }
    const later = pool.decode(format, block(3));
    await expect.poll(() => started[1]?.asked).toBe(1);
    started[1].lost();
    await expect(later).rejects.toThrow(/stopped by itself/);
    expect(started.map(({ stopped }) => stopped)).toEqual([true, true]);
  });

  it('starts no more workers than it has blocks for, and lets them rest when idle', async () => {
    const { started, start } = paperWorkers();
    const pool = kept(decodePool(start, 3));
    expect((await pool.decode(format, block(5)))[0]).toBe(5);
    expect(started).toHaveLength(1);
    await expect.poll(() => started[0].busy).toBe(false);
    await Promise.all(Array.from({ length: 20 }, (_, i) => pool.decode(format, block(i))));
    expect(started).toHaveLength(3);
    expect(started.every((worker) => !worker.busy)).toBe(true);
  });

  it('hands the heights over', async () => {
    const { started, start } = paperWorkers();
    const pool = kept(decodePool(start, 1));
    const heights = await pool.decode(format, block(5));
    const [transferred] = started[0].sent.at(-1) as [ArrayBuffer];
    // On this thread the sender's end can be looked at: its buffer is gone, ours holds the heights.
    expect(transferred.byteLength).toBe(0);
    expect(heights.buffer.byteLength).toBe(64 * 64 * 4);
  });

  it('never begins a block whose signal is aborted while it waits', async () => {
    const { started, start } = paperWorkers(true);
    const pool = kept(decodePool(start, 1));
    const held = [pool.decode(format, block(1)), pool.decode(format, block(2))];
    for (const one of held) one.catch(() => {});
    const abort = new AbortController();
    const waiting = pool.decode(format, block(3), abort.signal);
    const settled = expect(waiting).rejects.toThrow('moved on');
    await expect.poll(() => started[0]?.asked).toBe(2);
    abort.abort(new Error('moved on'));
    started[0].lost();
    await settled;
    expect(started).toHaveLength(1);
  });

  it('decodes on the own thread where no worker can be started', async () => {
    const throwing = kept(
      decodePool(() => {
        throw new Error('refused');
      }, 2),
    );
    expect((await throwing.decode(format, block(8)))[0]).toBe(8);
    const dying = kept(
      decodePool((lost) => {
        queueMicrotask(lost);
        return { port: { postMessage() {}, addEventListener() {} }, busy() {}, stop() {} };
      }, 2),
    );
    const all = await Promise.all([1, 2, 3].map((value) => dying.decode(format, block(value))));
    expect(all.map((heights) => heights[0])).toEqual([1, 2, 3]);
  });

  it('settles everything when it is closed, and refuses more', async () => {
    const { started, start } = paperWorkers(true);
    const pool = decodePool(start, 1);
    const all = Promise.allSettled([1, 2, 3, 4].map((value) => pool.decode(format, block(value))));
    await expect.poll(() => started[0]?.asked).toBe(2);
    await pool.close();
    expect((await all).map(({ status }) => status)).toEqual(new Array(4).fill('rejected'));
    await expect(pool.decode(format, block(1))).rejects.toBeInstanceOf(UserError);
  });
});
