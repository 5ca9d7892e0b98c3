import type { ByteSource, DecodePool } from '../../io/index.ts';
import { cacheStore, keepingFetch } from '../../io/offline/index.ts';
import { blobSource, urlSource } from '../../io/web/index.ts';
import { UserError } from '../../units/index.ts';
import type { Opener } from '../district.ts';

/** The network first, and without one whatever of the file is kept on this device. */
const networkFirst = (): typeof fetch => keepingFetch(cacheStore(), () => 'network first');

/** Reaches files that a person picked and addresses on the own host; `ask` is the `fetch` that it uses. */
export const webOpener = (pool: DecodePool | null, ask: typeof fetch = networkFirst()): Opener => ({
  bytes: (origin) =>
    typeof origin === 'string' ? named(urlSource(origin, { fetch: ask })) : blobSource(origin, origin.name),
  whole: async (origin, signal) =>
    new Uint8Array(await (typeof origin === 'string' ? fetchWhole(origin, ask, signal) : origin.arrayBuffer())),
  pool,
});

/** On the own host a file goes by its name, not by its whole address. */
const named = (source: ByteSource): ByteSource => ({
  ...source,
  name: source.name.startsWith(`${location.origin}/`) ? source.name.split('/').at(-1)! : source.name,
});

async function fetchWhole(url: string, ask: typeof fetch, signal: AbortSignal): Promise<ArrayBuffer> {
  let answer: Response;
  try {
    answer = await ask(url, { signal });
  } catch (cause) {
    if (signal.aborted) throw cause;
    throw new UserError('no-answer', `${url} gives no answer; check that the program still runs, then reload.`, {
      cause,
    });
  }
  if (!answer.ok) {
    throw new UserError('http-status', `${url} answered ${answer.status} ${answer.statusText}; check the address.`);
  }
  return answer.arrayBuffer();
}
