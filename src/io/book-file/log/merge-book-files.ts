import { requireSame, snapshotOf, type Update } from '../../../book/merge/index.ts';
import type { BookFile } from '../read-book-file.ts';
import type { BookFileParts } from '../write-book-file.ts';
import { checkLog } from './check-log.ts';
import { logLines } from './log-lines.ts';
import { stateOf } from './read-log.ts';

/** A book file and the name that sentences use for it. */
export interface NamedBookFile {
  readonly name: string;
  readonly file: BookFile;
}

/**
 * What a merged file is made of: every update of both files, the plain book they make, and the photos of both; which file comes first does
 * not matter. Everything that either holds is kept. `added`: updates that `b` brings and `a` brings. Throws a `UserError`
 * where a file has no log, or both hold different updates under one number.
 */
export async function mergeBookFiles(
  a: NamedBookFile,
  b: NamedBookFile,
): Promise<BookFileParts & { readonly added: { readonly toA: number; readonly toB: number } }> {
  const ofA = checkLog(a.file, a.name);
  const ofB = checkLog(b.file, b.name);
  const all = new Map<string, Update>(ofA);
  for (const [id, update] of ofB) {
    const known = ofA.get(id);
    if (known) requireSame(known, update, b.name);
    else all.set(id, update);
  }
  const photos = new Map<string, Uint8Array<ArrayBuffer>>();
  for (const { file } of [a, b]) {
    await file.eachPhoto(async ({ hash, bytes }) => {
      photos.set(hash, bytes);
    });
  }
  return {
    book: snapshotOf(stateOf(all.values(), `${a.name} and ${b.name}`)),
    log: logLines(all.values(), { crashes: true }),
    photo: async (hash) => photos.get(hash) ?? null,
    added: { toA: all.size - ofA.size, toB: all.size - ofB.size },
  };
}
