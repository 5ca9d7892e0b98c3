import type { ByteSource, DecodePool } from '../../io/index.ts';
import { blobSource, urlSource } from '../../io/web/index.ts';
import { UserError } from '../../units/index.ts';
import type { Opener } from '../district.ts';

/** Reaches files that a person picked and addresses on the own host. */
export const webOpener = (pool: DecodePool | null): Opener => ({
  bytes: (origin) => (typeof origin === 'string' ? named(urlSource(origin)) : blobSource(origin, origin.name)),
  text: (origin, signal) => (typeof origin === 'string' ? fetchText(origin, signal) : origin.text()),
  pool,
});

/** On the own host a file goes by its name, not by its whole address. */
const named = (source: ByteSource): ByteSource => ({
  ...source,
  name: source.name.startsWith(`${location.origin}/`) ? source.name.split('/').at(-1)! : source.name,
});

async function fetchText(url: string, signal: AbortSignal): Promise<string> {
  let answer: Response;
  try {
    answer = await fetch(url, { signal });
  } catch (cause) {
    if (signal.aborted) throw cause;
    throw new UserError('no-answer', `${url} gives no answer; check that the program still runs, then reload.`, {
      cause,
    });
  }
  if (!answer.ok) {
    throw new UserError('http-status', `${url} answered ${answer.status} ${answer.statusText}; check the address.`);
  }
  return answer.text();
}
