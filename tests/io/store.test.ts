import { describe, expect, it } from 'vitest';
import { restoreBook } from '../../src/book/index.ts';
import { memoryDisk } from '../../src/io/memory/index.ts';
import { openBook } from '../../src/io/store/index.ts';

import { editor, Hub, names, place, refusing, rename, site, world } from '../helpers/store-world.ts';

describe('an edit', () => {
  it('is there after a restart, with who, when and where', async () => {
    const disk = memoryDisk();
    const book = await openBook(disk, world('a'), editor);
    const update = await book.edit([site('s')], 'New site');
    expect(update).toMatchObject({
      actor: 'a-2',
      n: 1,
      t: [1_000_000, 0],
      who: 'Officer A',
      device: 'desk',
      label: 'New site',
    });
    expect(await book.edit([rename('Bend')], 'Rename')).toBeNull();
    const again = await openBook(disk, world('b'), editor);
    expect(names(again)).toEqual(['Bend']);
    expect(again.record('sites', 's')?.place).toEqual(place);
    expect(again.names).toMatchObject({ book: 'a-1', actor: 'a-2' });
    expect((await again.history('sites', 's')).map(({ who, label }) => [who, label])).toEqual([
      ['Officer A', 'New site'],
    ]);
  });

  it('after edit in haste each stands on the one before, also where nobody waits', async () => {
    const book = await openBook(memoryDisk(), world('a'), editor);
    await Promise.all([book.edit([site('s')], '1'), ...['B', 'C', 'D'].map((name) => book.edit([rename(name)], name))]);
    expect([names(book), book.book().contested, book.saving]).toEqual([['D'], [], 0]);
  });

  it('that cannot be used is refused, and the queue goes on', async () => {
    const book = await openBook(memoryDisk(), world('a'), editor);
    const bad = book.edit([{ table: 'sites', id: 's', set: { name: 7 } }], 'bad');
    const good = book.edit([site('s')], 'good');
    await expect(bad).rejects.toThrow(
      'This change: sites "s" has an unusable name: expected string, but 7 came; correct it.',
    );
    expect(await good).toMatchObject({ n: 1 });
    expect(book.unsaved).toEqual([]);
  });

  it('comes with its photo or not at all', async () => {
    const disk = memoryDisk();
    let full = false;
    const book = await openBook(
      refusing(disk, ({ blobs }) => full && !!blobs?.size),
      world('a'),
      editor,
    );
    const hash = 'ab'.repeat(32);
    const photo = { siteId: 's', hash, type: 'image/jpeg', widthPx: 1, heightPx: 1, sizeBytes: 3, showsPatient: false };
    await book.edit([{ table: 'photos', id: 'p', set: photo }], 'Photo', new Map([[hash, new Blob(['abc'])]]));
    expect([await (await book.photo(hash))?.text(), await book.photoHashes()]).toEqual(['abc', [hash]]);
    full = true;
    const other = { ...photo, hash: 'cd'.repeat(32) };
    await expect(
      book.edit([{ table: 'photos', id: 'q', set: other }], 'Photo', new Map([[other.hash, new Blob(['x'])]])),
    ).rejects.toThrow('no room');
    expect([book.record('photos', 'q'), await book.photo(other.hash)]).toEqual([null, null]);
  });
});

describe('a full disk', () => {
  it('keeps the edit as not saved, leaves the book whole, and saves it again', async () => {
    const disk = memoryDisk();
    let full = false;
    const book = await openBook(
      refusing(disk, () => full),
      world('a'),
      editor,
    );
    let told = 0;
    book.subscribe(() => {
      told += 1;
    });
    await book.edit([site('s')], 'New site');
    full = true;
    await expect(book.edit([rename('B')], 'Rename')).rejects.toThrow('There is no room left.');
    await expect(book.edit([rename('C')], 'Rename')).rejects.toThrow('There is no room left.');
    expect([names(book), book.unsaved.length, told]).toEqual([['Bend'], 2, 3]);
    await expect(book.saveAgain()).rejects.toThrow('There is no room left.');
    expect(book.unsaved.map(({ draft }) => draft.ops[0]![3])).toEqual(['B', 'C']);
    full = false;
    await book.saveAgain();
    expect([book.unsaved.length, (await openBook(disk, world('b'), editor)).book().tables.sites.length]).toEqual([
      0, 1,
    ]);
    // Both were made on "Bend": the later names only what it saw, so both stand until somebody decides.
    expect(
      book
        .book()
        .contested[0]?.values.map(({ value }) => value)
        .sort(),
    ).toEqual(['B', 'C']);
  });

  it('can be given up', async () => {
    const book = await openBook(
      refusing(memoryDisk(), ({ log }) => !!log?.length),
      world('a'),
      editor,
    );
    await expect(book.edit([site('s')], 'New')).rejects.toThrow();
    book.dropUnsaved();
    expect(book.unsaved).toEqual([]);
  });
});

describe('undo', () => {
  it('goes on after a restart', async () => {
    const disk = memoryDisk();
    const first = await openBook(disk, world('a'), editor);
    await first.edit([site('s')], 'New site');
    await first.edit([rename('B')], 'Rename site');
    const second = await openBook(disk, world('b'), editor);
    expect(await second.canTurn()).toEqual({ undo: 'Rename site', redo: null });
    expect(await second.undo()).toEqual([]);
    expect(names(second)).toEqual(['Bend']);
    const third = await openBook(disk, world('c'), editor);
    expect(await third.canTurn()).toEqual({ undo: 'New site', redo: 'Rename site' });
    await third.redo();
    await third.undo();
    await third.undo();
    expect(third.record('sites', 's')?.deleted).toBe(true);
    expect(await third.undo()).toBeNull();
    expect((await third.history('sites', 's')).at(-1)?.label).toBe('Undo: New site');
  });
});

describe('two tabs', () => {
  it('hear each other, number without a clash and keep both values of one field', async () => {
    const [disk, hub] = [memoryDisk(), new Hub()];
    const a = await openBook(disk, world('a', hub), editor);
    await a.edit([site('s')], 'New');
    const b = await openBook(disk, world('b', hub), editor);
    // At the same moment, before either hears of the other.
    const [one, two] = await Promise.all([a.edit([rename('A')], 'A'), b.edit([rename('B')], 'B')]);
    expect([one!.n, two!.n].sort()).toEqual([2, 3]);
    await Promise.all([a.canTurn(), b.canTurn()]);
    expect(a.book()).toEqual(b.book());
    expect(
      a
        .book()
        .contested[0]?.values.map(({ value }) => value)
        .sort(),
    ).toEqual(['A', 'B']);
    await a.edit([rename('C')], 'Decide');
    await b.canTurn();
    expect([names(b), b.book().contested]).toEqual([['C'], []]);
    // Both tabs undo the same stack.
    expect((await b.canTurn()).undo).toBe('Decide');
  });

  it('read anew what they did not hear', async () => {
    const disk = memoryDisk();
    const a = await openBook(disk, world('a'), editor);
    const b = await openBook(disk, world('b'), editor);
    await a.edit([site('s')], 'New');
    expect(names(b)).toEqual([]);
    await b.refresh();
    expect([names(b), b.heads()]).toEqual([['Bend'], a.heads()]);
    await b.edit([rename('B')], 'Rename');
    expect(b.book().contested).toEqual([]);
  });
});

describe('clocks', () => {
  it('that jump do not change what wins, and times never run backwards', async () => {
    const clock = world('a');
    const book = await openBook(memoryDisk(), clock, editor);
    await book.edit([site('s')], 'New');
    const times: number[] = [];
    for (const ms of [2_000_000, 500, 9e12, 3_000_000, Number.NaN]) {
      clock.ms = ms;
      times.push((await book.edit([rename(`at ${ms}`)], 'Rename'))!.t[0]);
      expect([names(book), book.book().contested]).toEqual([[`at ${ms}`], []]);
    }
    expect(times.slice(0, 2)).toEqual([2_000_000, 2_000_000]);
    expect(times.slice(2, 4)).toEqual([9e12, 3_000_000]);
  });
});

describe('the copy off the device', () => {
  it('is asked for as soon as there is something to lose, then by changes and days', async () => {
    const clock = world('a');
    const book = await openBook(memoryDisk(), clock, editor);
    const state = () => book.copyState();
    expect(state()).toEqual({ state: 'empty', changes: 0, days: null, remind: false });
    await book.edit([site('s')], 'New');
    expect(state()).toEqual({ state: 'none', changes: 1, days: null, remind: true });
    await book.noteCopyLeft();
    expect(state()).toEqual({ state: 'current', changes: 0, days: 0, remind: false });
    await book.edit([rename('B')], 'B');
    expect(state()).toEqual({ state: 'behind', changes: 1, days: 0, remind: false });
    clock.ms += 7 * 86_400_000;
    expect(state()).toEqual({ state: 'behind', changes: 1, days: 7, remind: true });
    clock.ms = 0;
    expect(state().days).toBe(0);
    for (let i = 0; i < 19; i++) await book.edit([rename(`N${i}`)], 'N');
    expect(state()).toMatchObject({ changes: 20, remind: true });
  });
});

describe('the snapshot', () => {
  it('is the plain book, written once edits settle or a page ends', async () => {
    const disk = memoryDisk();
    const book = await openBook(disk, world('a'), editor);
    await book.edit([site('s')], 'New');
    expect(await disk.readSnapshot()).toBeNull();
    await book.settle();
    const snapshot = await disk.readSnapshot();
    expect(restoreBook(JSON.parse(snapshot!.text), 'snapshot')).toEqual(book.book());
    expect(snapshot!.heads).toEqual(book.heads());
    await book.close();
  });

  it('of a tab that is behind is not written', async () => {
    const disk = memoryDisk();
    const a = await openBook(disk, world('a'), editor);
    const b = await openBook(disk, world('b'), editor);
    await a.edit([site('s')], 'New');
    await b.edit([site('t')], 'New');
    await a.settle();
    expect(await disk.readSnapshot()).toBeNull();
  });
});

describe('a schema that moved on', () => {
  it('a book of a newer program is refused by its number', async () => {
    const disk = memoryDisk();
    await openBook(disk, world('a'), editor);
    await disk.transact({}, ({ meta }) => ({ write: { meta: { ...meta!, version: 9 } }, answer: null }));
    await expect(openBook(disk, world('b'), editor)).rejects.toThrow(
      'The book on this device is of version 9, this program reads up to version 1; update the program.',
    );
  });

  it('records of an older one are made anew from the updates', async () => {
    const disk = memoryDisk();
    const book = await openBook(disk, world('a'), editor);
    await book.edit([site('s')], 'New');
    await disk.transact({}, ({ meta }) => ({
      write: { meta: { ...meta!, version: 0 }, records: [{ table: 'sites', id: 's', cells: {} }] },
      answer: null,
    }));
    const again = await openBook(disk, world('b'), editor);
    expect(again.book()).toEqual(book.book());
    expect((await disk.readAll()).meta?.version).toBe(1);
  });
});
