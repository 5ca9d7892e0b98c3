import type { Book } from '../../book/index.ts';
import { memorySource, readBookFile } from '../../io/index.ts';
import { cacheStore, keepingFetch, type ReadOrder } from '../../io/offline/index.ts';
import { UserError } from '../../units/index.ts';
import { demoBookFile } from '../demo.ts';

const ask = (order: ReadOrder): Promise<Response> =>
  keepingFetch(cacheStore(), () => order)(demoBookFile(), { cache: 'no-cache' });

/** The demo's book as its file has it, from the network or from what is kept of it. */
export async function demoBook(): Promise<Book> {
  let bytes: ArrayBuffer;
  try {
    const answer = await ask('network first');
    if (!answer.ok) throw new Error(`It answered ${answer.status}.`);
    bytes = await answer.arrayBuffer();
  } catch (cause) {
    throw new UserError('no-answer', 'The demo’s book gives no answer; connect to a network and try again.', { cause });
  }
  return (await readBookFile(memorySource(new Uint8Array(bytes), 'The demo’s book'))).book;
}

/** Keeps that file on this device. */
export async function keepDemoBook(): Promise<void> {
  await ask('keep');
}
