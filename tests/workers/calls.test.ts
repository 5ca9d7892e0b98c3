import { MessageChannel } from 'node:worker_threads';
import { afterEach, expect, test } from 'vitest';
import { UserError } from '../../src/units/index.ts';
import { connect, type Port, serve, transferring } from '../../src/workers/index.ts';

const open: { close(): void }[] = [];
afterEach(() => {
  for (const port of open.splice(0)) port.close();
});

/** Two connected ends: the functions on one, the client on the other, with every message copied or handed over for real. */
function pair<F extends Record<string, (request: never, signal: AbortSignal) => Promise<unknown>>>(functions: F) {
  const { port1, port2 } = new MessageChannel();
  open.push(port1, port2);
  port1.start();
  port2.start();
  serve(functions, port1 as unknown as Port);
  return connect<F>(port2 as unknown as Port);
}

test('answers come back to the call that asked, whatever their order', async () => {
  const client = pair({
    async wait({ ms, word }: { ms: number; word: string }) {
      await new Promise((resolve) => setTimeout(resolve, ms));
      return word;
    },
  });
  const slow = client.call('wait', { ms: 30, word: 'slow' });
  const quick = client.call('wait', { ms: 0, word: 'quick' });
  expect(await Promise.race([slow, quick])).toBe('quick');
  expect(await slow).toBe('slow');
});

test('a refusal keeps its code and sentence, a mistake its message, and both are answers', async () => {
  const client = pair({
    async refuse(_: null): Promise<never> {
      throw new UserError('no-road', 'No road within 50 m.');
    },
    async fail(_: null): Promise<never> {
      throw new TypeError('x is not a function');
    },
    async throwWord(_: null): Promise<never> {
      throw 'a bare word';
    },
  });
  const refused = await client.call('refuse', null).catch((error: unknown) => error);
  expect(refused).toBeInstanceOf(UserError);
  expect(refused).toMatchObject({ code: 'no-road', message: 'No road within 50 m.' });
  await expect(client.call('fail', null)).rejects.toThrow('x is not a function');
  await expect(client.call('throwWord', null)).rejects.toThrow('a bare word');
  await expect(client.call('nothing' as 'fail', null)).rejects.toThrow('no function "nothing"');
});

test('big buffers are handed over in both directions, not copied', async () => {
  let kept: ArrayBuffer | null = null;
  const client = pair({
    async turn({ bytes }: { bytes: ArrayBuffer }) {
      kept = new Uint8Array(bytes).reverse().buffer as ArrayBuffer;
      return transferring({ bytes: kept }, [kept]);
    },
  });
  const sent = Uint8Array.of(1, 2, 3).buffer;
  const { bytes } = await client.call('turn', transferring({ bytes: sent }, [sent]));
  expect([...new Uint8Array(bytes)]).toEqual([3, 2, 1]);
  expect(sent.byteLength).toBe(0);
  expect(kept!.byteLength).toBe(0);
});

test('giving up rejects at once and reaches the function', async () => {
  let told = false;
  const client = pair({
    wait: (_: null, signal) =>
      new Promise<never>((_resolve, reject) => {
        signal.addEventListener('abort', () => {
          told = true;
          reject(signal.reason);
        });
      }),
    async ping(_: null) {
      return told;
    },
  });
  const abort = new AbortController();
  const waiting = client.call('wait', null, abort.signal);
  abort.abort();
  await expect(waiting).rejects.toMatchObject({ name: 'AbortError' });
  expect(await client.call('ping', null)).toBe(true);
  await expect(client.call('ping', null, AbortSignal.abort())).rejects.toMatchObject({ name: 'AbortError' });
});

test('a lost worker answers everything that waits, and everything after', async () => {
  const client = pair({ wait: (_: null) => new Promise<never>(() => {}) });
  const waiting = client.call('wait', null);
  client.fail('It stopped.');
  await expect(waiting).rejects.toMatchObject({ code: 'worker-lost', message: 'It stopped.' });
  await expect(client.call('wait', null)).rejects.toMatchObject({ code: 'worker-lost' });
});
