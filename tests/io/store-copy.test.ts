import { describe, expect, it } from 'vitest';
import { memoryCopy, memoryDisk } from '../../src/io/memory/index.ts';
import { type BookDisk, openBook, runsOf, type SecondCopy } from '../../src/io/store/index.ts';
import { editor, Hub, names, rename, site, world } from '../helpers/store-world.ts';

const hash = 'ab'.repeat(32);
const photo = {
  table: 'photos' as const,
  id: 'p',
  set: { siteId: 's', hash, type: 'image/jpeg', widthPx: 1, heightPx: 1, sizeBytes: 3, showsPatient: false },
};
const withCopy = (tag: string, copy: SecondCopy) => world(tag, undefined, copy);

/** A disk as it was before a rename that the copy has. */
async function earlierDay(copy: SecondCopy): Promise<BookDisk> {
  const [disk, old] = [memoryDisk(), memoryDisk()];
  const book = await openBook(disk, withCopy('a', copy), editor);
  await book.edit([site('s')], 'New');
  const { meta, records } = await disk.readAll();
  const log = await disk.readLogFrom();
  await old.transact({}, () => ({ write: { meta: meta!, records, log }, answer: null }));
  await book.edit([rename('B')], 'Rename');
  return old;
}

describe('the second copy on the device', () => {
  it('gives back a book that the browser has emptied, photos and name included, under a new writer', async () => {
    const copy = memoryCopy();
    const first = await openBook(memoryDisk(), withCopy('a', copy), editor);
    await first.edit([site('s')], 'New');
    await first.edit([photo], 'Photo', new Map([[hash, new Blob(['abc'])]]));
    await first.edit([rename('B')], 'Rename');
    const second = await openBook(memoryDisk(), withCopy('b', copy), editor);
    expect([second.recovered, second.secondCopy]).toEqual([3, 'current']);
    expect(second.book()).toEqual(first.book());
    expect(await (await second.photo(hash))?.text()).toBe('abc');
    expect(second.names.book).toBe(first.names.book);
    expect(second.names.actor).not.toBe(first.names.actor);
    await second.edit([rename('C')], 'Rename');
    expect([names(second), second.book().contested]).toEqual([['C'], []]);
  });

  it('gives back what a disk of an earlier day lacks, and takes no number twice', async () => {
    const copy = memoryCopy();
    const old = await earlierDay(copy);
    const again = await openBook(old, withCopy('b', copy), editor);
    expect([again.recovered, names(again)]).toEqual([1, ['B']]);
    expect(await again.edit([rename('C')], 'Rename')).toMatchObject({ n: 1 });
  });

  it('is brought up where it lacks what the disk has', async () => {
    const [disk, copy] = [memoryDisk(), memoryCopy()];
    const first = await openBook(disk, world('a'), editor);
    expect(first.secondCopy).toBe('none');
    await first.edit([site('s'), photo], 'New', new Map([[hash, new Blob(['abc'])]]));
    await openBook(disk, withCopy('b', copy), editor);
    expect((await copy.look(first.names.book))?.held).toEqual([[first.names.actor, 1, 1]]);
    expect([...(await copy.read(first.names.book)).blobs.keys()]).toEqual([hash]);
  });

  it('that refuses does not keep the book from working, and shows', async () => {
    const refuse = (): Promise<never> => Promise.reject(new Error('no'));
    const broken: SecondCopy = {
      look: refuse,
      latestBeside: refuse,
      append: refuse,
      read: refuse,
      keepSnapshot: refuse,
      tidy: refuse,
    };
    const book = await openBook(memoryDisk(), withCopy('a', broken), editor);
    expect(await book.edit([site('s')], 'New')).toMatchObject({ n: 1 });
    expect([names(book), book.secondCopy]).toEqual([['Bend'], 'behind']);
  });

  it('that refused for a while has everything again with the next edit', async () => {
    const copy = memoryCopy();
    let refuses = true;
    const append: SecondCopy['append'] = (...given) =>
      refuses ? Promise.reject(new Error('no')) : copy.append(...given);
    const book = await openBook(memoryDisk(), withCopy('a', { ...copy, append }), editor);
    await book.edit([site('s'), photo], 'New', new Map([[hash, new Blob(['abc'])]]));
    await book.edit([rename('B')], 'Rename');
    expect([book.secondCopy, await copy.look(book.names.book)]).toEqual(['behind', null]);
    refuses = false;
    await book.edit([rename('C')], 'Rename');
    expect([book.secondCopy, await copy.look(book.names.book)]).toEqual([
      'current',
      { book: book.names.book, held: [[book.names.actor, 1, 3]], photos: [hash] },
    ]);
  });

  it('that cannot be asked may hold more than the disk: no number is given again, and all of it comes back later', async () => {
    const copy = memoryCopy();
    const old = await earlierDay(copy);
    const look = (): Promise<never> => Promise.reject(new Error('no'));
    const blind = await openBook(old, withCopy('b', { ...copy, look }), editor);
    expect(names(blind)).toEqual(['Bend']);
    await blind.edit([site('t', 'Other')], 'New');
    const again = await openBook(old, withCopy('c', copy), editor);
    expect([again.recovered, names(again)]).toEqual([1, ['B', 'Other']]);
  });

  it('that cannot be asked when the disk is found empty gives the lost book back at the next start that can', async () => {
    const copy = memoryCopy();
    const first = await openBook(memoryDisk(), withCopy('a', copy), editor);
    await first.edit([site('s')], 'New');
    await first.edit([photo], 'Photo', new Map([[hash, new Blob(['abc'])]]));
    const disk = memoryDisk();
    const deaf = (): Promise<never> => Promise.reject(new Error('no'));
    for (const [tag, id] of [
      ['b', 't'],
      ['c', 'u'],
    ] as const) {
      const blind = await openBook(disk, withCopy(tag, { ...copy, look: deaf, latestBeside: deaf }), editor);
      await blind.edit([site(id, `While ${tag}`)], 'New');
      expect(names(blind)).not.toContain('Bend');
    }
    const again = await openBook(disk, withCopy('d', copy), editor);
    expect([again.recovered, names(again).sort()]).toEqual([2, ['Bend', 'While b', 'While c']]);
    expect(again.names.book).toBe(first.names.book);
    expect(await (await again.photo(hash))?.text()).toBe('abc');
    // The copy of the lost book has all of it; a book kept beside it later is none that was lost.
    expect((await copy.look(first.names.book))?.held).toHaveLength(3);
    const other = await openBook(memoryDisk(), world('e'), editor);
    await other.edit([site('v', 'Other')], 'New');
    await copy.append('beside', await other.updates(), new Map());
    const last = await openBook(disk, withCopy('f', copy), editor);
    expect([last.recovered, names(last)]).not.toContain('Other');
    expect(last.recovered).toBe(0);
  });

  it('gets a photo again that it has lost without its update', async () => {
    const [disk, copy] = [memoryDisk(), memoryCopy()];
    const bare: SecondCopy = { ...copy, append: (book, updates) => copy.append(book, updates, new Map()) };
    const first = await openBook(disk, withCopy('a', bare), editor);
    await first.edit([site('s'), photo], 'New', new Map([[hash, new Blob(['abc'])]]));
    const holds = async () => (await copy.look(first.names.book))?.photos;
    expect(await holds()).toEqual([]);
    await openBook(disk, withCopy('b', copy), editor);
    expect(await holds()).toEqual([hash]);
  });

  it('with a spoilt line gives back the rest', async () => {
    const copy = memoryCopy();
    const first = await openBook(memoryDisk(), withCopy('a', copy), editor);
    await first.edit([site('s')], 'New');
    await first.edit([rename('B')], 'Rename');
    const spoilt: SecondCopy = {
      ...copy,
      read: async (book) => {
        const { updates, blobs } = await copy.read(book);
        return {
          updates: [
            updates[0],
            { v: 1, n: 'x' },
            null,
            { ...(updates[1] as object), ops: [['sites', 's', 'name', 7, []]] },
          ],
          blobs,
        };
      },
    };
    const again = await openBook(memoryDisk(), withCopy('b', spoilt), editor);
    expect([again.recovered, names(again)]).toEqual([1, ['Bend']]);
  });

  it('of another book is left alone', async () => {
    const [disk, copy] = [memoryDisk(), memoryCopy()];
    const own = await openBook(disk, world('a'), editor);
    await own.edit([site('s')], 'New');
    const other = await openBook(memoryDisk(), withCopy('b', copy), editor);
    await other.edit([site('t', 'Other')], 'New');
    const again = await openBook(disk, withCopy('c', copy), editor);
    expect([again.recovered, names(again)]).toEqual([0, ['Bend']]);
    expect((await copy.look(other.names.book))?.held).toHaveLength(1);
  });

  it('takes what comes by a merge', async () => {
    const copy = memoryCopy();
    const a = await openBook(memoryDisk(), world('a'), editor);
    await a.edit([site('s')], 'New');
    const b = await openBook(memoryDisk(), world('b', new Hub(), copy), editor);
    await b.receive(await a.updates(), 'a');
    expect((await copy.look(b.names.book))?.held).toEqual([[a.names.actor, 1, 1]]);
  });
});

it('runs say what they hold', async () => {
  const book = await openBook(memoryDisk(), world('a'), editor);
  for (let i = 0; i < 5; i++) await book.edit([site(`s${i}`)], 'New');
  const [one, two, , four, five] = await book.updates();
  const runs = runsOf([five!, one!, two!, four!, two!]);
  expect(runs.map(({ held, updates }) => [held, updates.length])).toEqual([
    [['a-2', 1, 2], 2],
    [['a-2', 4, 5], 2],
  ]);
});
