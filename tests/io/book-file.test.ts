import { strToU8, unzipSync, type Zippable, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { type Book, restoreBook } from '../../src/book/index.ts';
import { readBookFile, sha256, withoutUnasked, writeBookFile } from '../../src/io/book-file/index.ts';
import { checkLog, logLines, logOfBook } from '../../src/io/book-file/log/index.ts';
import { memorySource } from '../../src/io/memory/index.ts';
import { seededRandom, UserError } from '../../src/units/index.ts';
import { mutated } from '../helpers/mutate.ts';
import { hostileTexts, sampleBook, samplePhotos } from '../helpers/sample-book.ts';

const all = { crashes: true, patientPhotos: true };
const none = { crashes: false, patientPhotos: false };
const writtenAtMs = Date.UTC(2026, 4, 3, 12);
const log = ['{"a":"dev1","n":1}', '{"a":"dev1","n":2,"x":"\u2028<&"}'];
const source = (bytes: Uint8Array<ArrayBuffer>) => memorySource(bytes, 'test.brinkbook');

async function parts(text?: string) {
  const hashes = [await sha256(samplePhotos.jpeg), await sha256(samplePhotos.png)];
  const bytes = new Map([
    [hashes[0], samplePhotos.jpeg],
    [hashes[1], samplePhotos.png],
  ]);
  return { book: sampleBook(text, hashes), log, photo: async (hash: string) => bytes.get(hash) ?? null, hashes };
}

async function everything(bytes: Uint8Array<ArrayBuffer>) {
  const file = await readBookFile(source(bytes));
  const photos: [string, string, Uint8Array][] = [];
  await file.eachPhoto(async ({ hash, type, bytes: photo }) => {
    photos.push([hash, type, photo]);
  });
  return { manifest: file.manifest, book: file.book, log: file.log, hashes: file.photoHashes, photos };
}

describe('a book file', () => {
  it.each(['a note', ...hostileTexts, 'x'.repeat(20_000)])(
    'gives back the same book, log and photos: %#',
    async (text) => {
      const made = await parts(text);
      const read = await everything(await writeBookFile(made, { asked: all, writtenAtMs }));
      expect(read.book).toEqual(made.book);
      expect(read.log).toEqual(log);
      expect(read.photos).toEqual([
        [made.hashes[0], 'image/jpeg', samplePhotos.jpeg],
        [made.hashes[1], 'image/png', samplePhotos.png],
      ]);
      expect(read.manifest).toMatchObject({ content: 'whole', writtenAt: '2026-05-03T12:00:00.000Z' });
    },
  );

  it('is the same bytes for the same book', async () => {
    const [a, b] = [await parts(), await parts()];
    expect(await writeBookFile(a, { asked: all, writtenAtMs })).toEqual(
      await writeBookFile(b, { asked: all, writtenAtMs }),
    );
  });

  it('leaves crash points and patient photos out of a reading copy unless asked for, and says so', async () => {
    const made = { ...(await parts()), log: null };
    const {
      manifest,
      book,
      photos,
      log: lines,
    } = await everything(await writeBookFile(made, { asked: none, writtenAtMs }));
    expect(manifest.leftOut).toEqual({ crashes: true, patientPhotos: true, missingPhotos: [] });
    expect([manifest.content, lines, book.tables.crashes, photos.length]).toEqual(['reading copy', null, [], 1]);
    expect(book.tables.photos.map(({ id }) => id)).toEqual(['p1']);
    const rest = ({ tables: { crashes: _c, photos: _p, ...tables } }: Book) => tables;
    expect(rest(book)).toEqual(rest(made.book));
    const asked = await everything(await writeBookFile(made, { asked: all, writtenAtMs }));
    expect([asked.book.tables.crashes.length, asked.photos.length]).toEqual([1, 2]);
  });

  it('without the unasked is the same book but for crashes and patient photos, contested ones too', async () => {
    const { book } = await parts();
    const values = [1, 2].map((value) => ({ value, who: 'a', device: 'b', atMs: 1 }));
    const contested = [
      { table: 'crashes' as const, id: 'k1', field: 'severity', values },
      { table: 'photos' as const, id: 'p2', field: 'caption', values },
      { table: 'sites' as const, id: 's1', field: 'notes', values },
    ];
    const left = withoutUnasked({ ...book, contested }, none);
    expect(left.contested.map(({ table }) => table)).toEqual(['sites']);
    expect(withoutUnasked({ ...book, contested }, all)).toEqual({ ...book, contested });
  });

  it('leaves out every record of bytes that somewhere are said to show a patient', async () => {
    const { book } = await parts();
    const [first, second] = book.tables.photos;
    const unmarked = { ...second!, id: 'p9', caption: 'no word of a patient', showsPatient: false };
    const left = withoutUnasked({ ...book, tables: { ...book.tables, photos: [first!, second!, unmarked] } }, none);
    expect(left.tables.photos.map(({ id }) => id)).toEqual(['p1']);
  });

  it('names photos that are not on the device', async () => {
    const made = await parts();
    const { manifest } = await everything(
      await writeBookFile({ ...made, photo: async () => null }, { asked: all, writtenAtMs }),
    );
    expect(manifest.leftOut.missingPhotos).toEqual([...made.hashes].sort());
  });

  it('reads a file that another zip program wrote again: other order, a folder entry, other packing', async () => {
    const made = await parts();
    const entries = unzipSync(await writeBookFile(made, { asked: all, writtenAtMs }));
    const again: Zippable = { 'photos/': [new Uint8Array(0), { level: 0 }] };
    for (const name of Object.keys(entries).reverse()) again[name] = [entries[name]!, { level: 9 }];
    expect((await everything(zipSync(again) as Uint8Array<ArrayBuffer>)).book).toEqual(made.book);
  });
});

describe('a book file is refused with one sentence', async () => {
  const made = await parts();
  const good = await writeBookFile(made, { asked: all, writtenAtMs });
  const entries = (): Record<string, Uint8Array> => unzipSync(good);
  const zip = (files: Record<string, Uint8Array>) => zipSync(files) as Uint8Array<ArrayBuffer>;
  const refusal = async (bytes: Uint8Array<ArrayBuffer>): Promise<string> => {
    const error = await readBookFile(source(bytes)).then(
      () => null,
      (cause: unknown) => cause,
    );
    expect(error).toBeInstanceOf(UserError);
    expect((error as Error).message).toMatch(/^test\.brinkbook [^\n]{10,300}\.$/);
    return (error as Error).message;
  };

  it('where it is none, empty or cut', async () => {
    expect(await refusal(new Uint8Array(0))).toMatch(/is no book file/);
    expect(await refusal(strToU8('%PDF-1.7 something else') as Uint8Array<ArrayBuffer>)).toMatch(/is no book file/);
    expect(await refusal(good.slice(0, good.length / 3))).toMatch(/damaged|too early|lacks/);
    expect(await refusal(zip({ 'manifest.json': strToU8('{}') }))).toMatch(/unusable format in its manifest/);
  });

  it('where a byte of any entry was changed', async () => {
    for (const name of Object.keys(entries())) {
      const files = entries();
      files[name] = Uint8Array.from(files[name]!);
      files[name]![files[name]!.length - 3]! ^= 1;
      expect(await refusal(zip(files))).toMatch(name === 'manifest.json' ? /manifest/ : new RegExp(name.slice(0, 20)));
    }
  });

  it.each([
    '../evil.json',
    'photos/../../x.jpg',
    '/etc/passwd',
    'photos/x.svg',
    '__proto__',
    'snapshot.json.exe',
    'C:\\x',
    'manifest.JSON',
  ])('where it holds %s', async (name) => {
    const { 'manifest.json': manifest, ...rest } = entries();
    const bytes = zip({ 'manifest.json': manifest!, 'placeholder-': strToU8('x'), ...rest });
    // The zip writer itself would split some of these names, so the name is put in afterwards.
    const text = Buffer.from(bytes).toString('latin1').replaceAll('placeholder-', name.padEnd(12, '-').slice(0, 12));
    expect(await refusal(new Uint8Array(Buffer.from(text, 'latin1')))).toMatch(/cannot hold/);
  });

  it('where an entry is missing, extra or there twice', async () => {
    const { 'log.jsonl': _log, ...noLog } = entries();
    expect(await refusal(zip(noLog))).toMatch(/lacks its entry log\.jsonl/);
    const extra = `photos/${'0'.repeat(64)}.jpg`;
    expect(await refusal(zip({ ...entries(), [extra]: samplePhotos.jpeg }))).toMatch(/damaged/);
    const other = new Uint8Array([0xff, 0xd8, 0xff, 0, 9]);
    expect(await refusal(zip({ ...entries(), [`photos/${await sha256(other)}.jpg`]: other }))).toMatch(/does not list/);
    const twice = Buffer.from(zip({ ...entries(), 'log.json_': strToU8('x') }))
      .toString('latin1')
      .replaceAll('log.json_', 'log.jsonl');
    expect(await refusal(new Uint8Array(Buffer.from(twice, 'latin1')))).toMatch(/twice/);
  });

  it('where it unpacks to more than it may hold, long before it has filled the memory', async () => {
    const bomb = zip({ 'manifest.json': new Uint8Array(60e6) });
    expect(bomb.length).toBeLessThan(100_000);
    expect(await refusal(bomb)).toMatch(/unpacks "manifest\.json" to more/);
  });

  it('where it is of a newer version, by the number', async () => {
    const files = entries();
    files['manifest.json'] = strToU8(Buffer.from(files['manifest.json']!).toString().replace('file@1', 'file@12'));
    expect(await refusal(zip(files))).toMatch(/version 12, this program reads up to version 1; update the program/);
  });

  it('where its records are wrong although every hash is right', async () => {
    const bad = {
      ...made.book,
      tables: { ...made.book.tables, sites: [{ ...made.book.tables.sites[0]!, patients: 0 }] },
    };
    const bytes = await writeBookFile({ ...made, book: bad as Book }, { asked: all, writtenAtMs });
    const error = await readBookFile(source(bytes)).catch((cause: unknown) => cause);
    expect((error as UserError).message).toMatch(/sites "s1" has an unusable patients/);
  });
});

const made2 = await parts('word');

describe('mutated book files', () => {
  it('2,000 whose entries were changed and whose hashes fit again are refused, or give a book that the door lets through', async () => {
    const updates = logOfBook(sampleBook('word', made2.hashes), { actor: 'a', who: 'b', device: 'c', atMs: 1 });
    const good = unzipSync(
      await writeBookFile({ ...made2, log: logLines(updates, { crashes: true }) }, { asked: all, writtenAtMs }),
    );
    const random = seededRandom(77);
    const counts = { refused: 0, read: 0, sound: 0 };
    for (let n = 0; n < 2000; n++) {
      const name = n % 2 === 0 ? 'snapshot.json' : 'log.jsonl';
      const files: Record<string, Uint8Array> = { ...good, [name]: mutated(good[name]!, random) };
      const manifest = JSON.parse(Buffer.from(files['manifest.json']!).toString());
      const entry = manifest.entries.find((one: { name: string }) => one.name === name);
      Object.assign(entry, { bytes: files[name]!.length, sha256: await sha256(Uint8Array.from(files[name]!)) });
      files['manifest.json'] = strToU8(JSON.stringify(manifest));
      try {
        const file = await readBookFile(source(zipSync(files, { level: 0 }) as Uint8Array<ArrayBuffer>));
        counts.read++;
        expect(restoreBook(JSON.parse(JSON.stringify(file.book)), 'again')).toEqual(file.book);
        checkLog(file, 'mutated');
        counts.sound++;
      } catch (error) {
        if (!(error instanceof UserError)) throw new Error(`mutation ${n}`, { cause: error });
        expect(error.message).toMatch(/^[^\n]{10,600}\.$/);
        counts.refused++;
      }
    }
    console.log(`book files with fitting hashes: ${JSON.stringify(counts)}`);
    expect(counts.refused).toBeGreaterThan(1500);
    expect(Object.keys(Object.prototype)).toEqual([]);
  }, 60_000);
});

describe('4,000 mutated book files', () => {
  it('are refused with a sentence or give exactly the book that was written', async () => {
    const made = await parts();
    const good = await writeBookFile(made, { asked: all, writtenAtMs });
    const before = JSON.stringify(made.book);
    const random = seededRandom(20_261);
    const counts = { refused: 0, same: 0 };
    for (let n = 0; n < 4000; n++) {
      const bytes = mutated(good, random);
      try {
        const { book, log: lines, photos } = await everything(bytes);
        expect([book, lines, photos.length]).toEqual([made.book, log, 2]);
        counts.same++;
      } catch (error) {
        if (!(error instanceof UserError)) throw new Error(`mutation ${n}`, { cause: error });
        counts.refused++;
      }
    }
    console.log(`book files: ${counts.refused} refused, ${counts.same} unchanged in what they hold`);
    expect(counts.refused).toBeGreaterThan(3000);
    expect(JSON.stringify(made.book)).toBe(before);
    expect(Object.keys(Object.prototype)).toEqual([]);
  }, 60_000);
});
