import { beforeAll, describe, expect, test } from 'vitest';
import type { Book } from '../../src/book/index.ts';
import { composeDraft, emptyState, finish, type Update } from '../../src/book/merge/index.ts';
import { checkLog } from '../../src/io/book-file/log/index.ts';
import { memoryDisk } from '../../src/io/index.ts';
import { type OpenBook, openBook } from '../../src/io/store/index.ts';
import { bringDemo } from '../../src/ui/actions/bring.ts';
import { demoBook, demoBookFile } from '../helpers/demo-book.ts';

let file: readonly Update[];
let demo: Book;
beforeAll(async () => {
  file = [...checkLog(await demoBookFile(), 'tamarrow.brinkbook').values()];
  demo = await demoBook();
});

let minted = 0;
const device = (): Promise<OpenBook> => {
  const world = { now: () => 1e12 + minted, mintId: () => `device${++minted}`, channel: null, copy: null };
  return openBook(memoryDisk(), world, { who: 'R. Marsh', device: 'tablet' });
};

/** A demo as earlier versions began it: sites, marks and mile markers of plain files. */
async function earlier(): Promise<OpenBook> {
  const book = await device();
  const { sites, marks, routes, mileMarkers } = demo.tables;
  const changes = [
    { table: 'settings' as const, id: 'book', set: { invented: true } },
    ...sites.map(({ id, name, place, roadName }) => ({ table: 'sites' as const, id, set: { name, place, roadName } })),
    ...marks.map(({ id, kind, name, geometry }) => ({ table: 'marks' as const, id, set: { kind, name, geometry } })),
    ...routes.map(({ id, name, ref }) => ({ table: 'routes' as const, id, set: { name, ref } })),
    ...mileMarkers.map(({ id, routeId, post }) => ({ table: 'mileMarkers' as const, id, set: { routeId, post } })),
  ];
  const draft = composeDraft(emptyState(), changes, { who: 'the files', device: 'the files', label: 'Read the files' });
  await book.receive([finish(draft!, 'files', 1, [0, 0])], 'The files');
  return book;
}

const bring = (book: OpenBook): Promise<void> => bringDemo(book, { updates: file });

describe('the demo’s book file on a device', () => {
  test('is the whole of a new demo, is taken once, and is nobody’s work to lose', async () => {
    const book = await device();
    await bring(book);
    expect(book.book()).toEqual(demo);
    expect(book.copyState()).toMatchObject({ state: 'empty', remind: false });
    await book.edit([{ table: 'measurements', id: 'reading-5', set: { deleted: true } }], 'Delete a reading');
    await bring(book);
    expect(book.record('measurements', 'reading-5')!.deleted).toBe(true);
    expect(book.copyState()).toMatchObject({ state: 'none', changes: 1, remind: true });
  });

  test('brings a demo of an earlier version all that it lacked', async () => {
    const book = await earlier();
    expect(book.book().tables.measurements).toEqual([]);
    await bring(book);
    expect(book.book().tables).toEqual(demo.tables);
    expect(book.book().contested).toEqual([]);
    const writers = book.heads().length;
    await bring(book);
    expect(book.heads()).toHaveLength(writers);
  });

  test('leaves what a person did there as it is, and contests none of it', async () => {
    const book = await earlier();
    const moved = { lon: -128.0001, lat: 44.0001, sideAzimuthDeg: 10 };
    await book.edit([{ table: 'sites', id: 'kettle-bend', set: { name: 'Own name', place: moved } }], 'Move');
    await book.edit([{ table: 'sites', id: 'split-oak', set: { deleted: true } }], 'Delete');
    await book.edit([{ table: 'marks', id: demo.tables.marks[0]!.id, set: { deleted: true } }], 'Delete');
    await book.edit([{ table: 'kits', id: 'own-kit', set: { name: 'Own kit' } }], 'Add');
    await book.edit([{ table: 'settings', id: 'book', set: { angleRuleName: '45/60' } }], 'Rule');
    const before = book.book();
    await bring(book);
    const after = book.book();
    expect(after.contested).toEqual([]);
    const one = <T extends { id: string }>(list: readonly T[], id: string): T => list.find((each) => each.id === id)!;
    expect(one(after.tables.sites, 'kettle-bend')).toEqual(one(before.tables.sites, 'kettle-bend'));
    expect(one(after.tables.sites, 'split-oak').deleted).toBe(true);
    expect(after.tables.measurements.filter(({ siteId }) => siteId === 'split-oak')).toEqual([]);
    expect(after.tables.measurements.some(({ siteId }) => siteId === 'kettle-bend')).toBe(true);
    expect(after.tables.marks[0]!.deleted).toBe(true);
    expect(after.tables.kits.map(({ id }) => id)).toEqual(['own-kit']);
    expect([after.tables.ropes, after.tables.kitItems]).toEqual([[], []]);
    expect(after.tables.fleet).toEqual(demo.tables.fleet);
    expect(after.tables.settings[0]!.angleRuleName).toBe('45/60');
    // The last edit is still the person's own to take back.
    expect((await book.canTurn()).undo).toBe('Rule');
    await book.undo();
    expect(book.book().tables.settings[0]!.angleRuleName).toBe('30/45');
  });
});
