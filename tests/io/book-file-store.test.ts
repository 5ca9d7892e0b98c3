import { describe, expect, it } from 'vitest';
import { readBookFile, sha256, writeBookFile } from '../../src/io/book-file/index.ts';
import { fileOfBook, logLines, logOfBook, takeInFile } from '../../src/io/book-file/log/index.ts';
import { memoryDisk, memorySource } from '../../src/io/memory/index.ts';
import { type OpenBook, openBook } from '../../src/io/store/index.ts';
import { seededRandom, UserError } from '../../src/units/index.ts';
import { mutated } from '../helpers/mutate.ts';
import { sampleBook, samplePhotos } from '../helpers/sample-book.ts';

const all = { crashes: true, patientPhotos: true };
const hashes = [await sha256(samplePhotos.jpeg), await sha256(samplePhotos.png)];
const photos = new Map([samplePhotos.jpeg, samplePhotos.png].map((bytes, i) => [hashes[i]!, new Blob([bytes])]));

async function device(tag: string): Promise<OpenBook> {
  let ids = 0;
  const world = { now: () => 1_000_000 + ids, mintId: () => `${tag}-${++ids}`, channel: null, copy: null };
  return openBook(memoryDisk(), world, { who: tag, device: tag });
}

async function filled(tag: string): Promise<OpenBook> {
  const book = await device(tag);
  await book.receive(
    logOfBook(sampleBook('a note', hashes), { actor: 'desk', who: 'Desk', device: 'desk', atMs: 1 }),
    'test',
    photos,
  );
  await book.edit([{ table: 'sites', id: 's1', set: { notes: `by ${tag}` } }], 'Notes');
  return book;
}

/** Everything that a device holds, as one text. */
async function whole(book: OpenBook): Promise<string> {
  const blobs = await Promise.all(
    (await book.photoHashes())
      .sort()
      .map(async (hash) => [hash, ...new Uint8Array(await (await book.photo(hash))!.arrayBuffer())]),
  );
  return JSON.stringify([await book.updates(), book.book(), blobs, book.names]);
}

const open = (bytes: Uint8Array<ArrayBuffer>) => readBookFile(memorySource(bytes, 'file.brinkbook'));
const options = { asked: all, content: 'whole', writtenAtMs: 5 } as const;

describe('a device’s book and a file of it', () => {
  it('book → file → another device: the same book, photos and history', async () => {
    const a = await filled('a');
    const { bytes, held } = await fileOfBook(a, options);
    expect(held).toEqual(a.heads());
    const b = await device('b');
    expect(await takeInFile(b, await open(bytes), 'file.brinkbook')).toMatchObject({
      added: (await a.updates()).length,
      known: 0,
    });
    expect(b.book()).toEqual(a.book());
    expect(await b.updates()).toEqual(await a.updates());
    expect((await b.photoHashes()).sort()).toEqual([...hashes].sort());
    expect((await fileOfBook(b, options)).bytes).toEqual(bytes);
  });

  it('files that cross each other leave both devices with the same book and the same choice to make', async () => {
    const [a, b] = [await filled('a'), await filled('b')];
    const [fromA, fromB] = [await fileOfBook(a, options), await fileOfBook(b, options)];
    await takeInFile(a, await open(fromB.bytes), 'b.brinkbook');
    await takeInFile(b, await open(fromA.bytes), 'a.brinkbook');
    expect(a.book()).toEqual(b.book());
    expect(a.book().contested.map(({ field }) => field)).toEqual(['notes']);
    const before = await whole(a);
    expect(await takeInFile(a, await open(fromB.bytes), 'b.brinkbook')).toMatchObject({ added: 0 });
    expect(await whole(a)).toBe(before);
  });

  it('a file in which something was left out is no backup', async () => {
    const a = await filled('a');
    const left = await fileOfBook(a, { ...options, asked: { crashes: false, patientPhotos: true } });
    expect(left.held).toEqual([]);
    const file = await open(left.bytes);
    expect([file.book.tables.crashes, file.manifest.leftOut.crashes]).toEqual([[], true]);
    const copy = await fileOfBook(a, { ...options, content: 'reading copy' });
    expect([copy.held, (await open(copy.bytes)).log]).toEqual([[], null]);
  });

  it('500 mutated files of another device: refused and the book stays byte for byte as it was, or all of the file is in it', async () => {
    const other = (await fileOfBook(await filled('b'), options)).bytes;
    const wanted = await filled('a');
    await takeInFile(wanted, await open(other), 'file.brinkbook');
    const after = await whole(wanted);
    let a = await filled('a');
    const before = await whole(a);
    const random = seededRandom(31);
    const counts = { refused: 0, taken: 0 };
    for (let n = 0; n < 500; n++) {
      try {
        await takeInFile(a, await open(mutated(other, random)), 'file.brinkbook');
        counts.taken++;
        expect(await whole(a)).toBe(after);
        a = await filled('a');
      } catch (error) {
        if (!(error instanceof UserError)) throw new Error(`mutation ${n}`, { cause: error });
        counts.refused++;
        expect(await whole(a)).toBe(before);
      }
    }
    expect(counts.refused).toBeGreaterThan(300);
    expect(counts.taken).toBeGreaterThan(0);
  }, 60_000);

  it('a file whose hashes fit and whose last edit is unusable changes nothing either', async () => {
    const a = await filled('a');
    const before = await whole(a);
    const updates = logOfBook(sampleBook('other', hashes), { actor: 'x', who: 'X', device: 'x', atMs: 1 });
    const lines = logLines(updates, all);
    const bent = lines.at(-1)!.replace('"serious"', '"no such severity"');
    expect(bent).not.toBe(lines.at(-1));
    const parts = { book: sampleBook('other', hashes), log: [...lines.slice(0, -1), bent], photo: async () => null };
    const file = await open(await writeBookFile(parts, { asked: all, writtenAtMs: 1 }));
    await expect(takeInFile(a, file, 'bent.brinkbook')).rejects.toThrow(/unusable severity/);
    expect(await whole(a)).toBe(before);
  });
});
