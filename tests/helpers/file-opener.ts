import { readFile } from 'node:fs/promises';
import { afterAll } from 'vitest';
import type { ByteSource } from '../../src/io/index.ts';
import { fileSource } from '../../src/io/node/index.ts';
import type { Opener } from '../../src/workers/index.ts';

/** Opens files by their paths for what runs in a worker; closes them after the tests of the file that asks. */
export function fileOpener(): Opener {
  const opened: ByteSource[] = [];
  afterAll(async () => {
    for (const source of opened) await source.close?.();
  });
  return {
    bytes: (origin) => {
      const source = fileSource(origin as string);
      opened.push(source);
      return source;
    },
    whole: async (origin) => new Uint8Array(await readFile(origin as string)),
    pool: null,
  };
}
