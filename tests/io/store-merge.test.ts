import { describe, expect, it } from 'vitest';
import type { Update } from '../../src/book/merge/index.ts';
import { memoryDisk } from '../../src/io/memory/index.ts';
import { openBook } from '../../src/io/store/index.ts';

import { editor, names, rename, site, world } from '../helpers/store-world.ts';

describe('a merge', () => {
  const twoBooks = async () => {
    const a = await openBook(memoryDisk(), world('a'), editor);
    const b = await openBook(memoryDisk(), world('b'), { who: 'Officer B', device: 'phone' });
    await a.edit([site('s')], 'New');
    await b.receive(await a.updates(), 'a.brinkbook');
    return [a, b] as const;
  };

  it('in either order gives the same book, whichever is sent twice', async () => {
    const [a, b] = await twoBooks();
    await a.edit([rename('A')], 'A');
    await b.edit([rename('B')], 'B');
    await b.edit([{ table: 'sites', id: 's', set: { notes: 'wet' } }], 'Notes');
    const toA = await b.updates(a.heads());
    expect(toA).toHaveLength(2);
    expect(await a.receive([...toA, ...toA], 'b')).toEqual({ added: 2, known: 2, newer: 0 });
    expect(await b.receive(await a.updates(), 'a')).toEqual({ added: 1, known: 3, newer: 0 });
    expect(a.book()).toEqual(b.book());
    expect(a.book().contested).toHaveLength(1);
  });

  it('with one bad update takes nothing', async () => {
    const [a, b] = await twoBooks();
    await b.edit([rename('B')], 'B');
    const before = JSON.stringify([await a.updates(), a.book()]);
    const [good] = await b.updates(a.heads());
    const bad = { ...good!, n: 2, ops: [['sites', 's', 'name', null, []]] };
    await expect(a.receive([good, bad], 'b.brinkbook')).rejects.toThrow(
      /^b\.brinkbook, update b-2:2: sites "s" has an unusable name/,
    );
    await expect(a.receive([good, { v: 1 }], 'b.brinkbook')).rejects.toThrow(/^b\.brinkbook: update/);
    expect(JSON.stringify([await a.updates(), a.book()])).toBe(before);
  });

  it('of two copies that write under one name is a loud error and takes nothing', async () => {
    const [a, b] = await twoBooks();
    await b.edit([rename('B')], 'B');
    const [theirs] = await b.updates(a.heads());
    await a.receive([theirs], 'b');
    await expect(a.receive([{ ...theirs!, label: 'other' }], 'copy.brinkbook')).rejects.toThrow(
      /^copy\.brinkbook: update b-2:1 of "phone" is not the one/,
    );
    // Also where both come in one file.
    const c = await openBook(memoryDisk(), world('c'), editor);
    await expect(c.receive([theirs, { ...theirs!, label: 'other' }], 'copy')).rejects.toThrow(/was copied/);
    expect(await c.updates()).toEqual([]);
  });

  it('that brings own updates which this device lacks makes it a new writer', async () => {
    const disk = memoryDisk();
    const a = await openBook(disk, world('a'), editor);
    await a.edit([site('s')], 'New');
    const [first] = await a.updates();
    const lost: Update = { ...first!, n: 2, ops: [['sites', 's', 'name', 'Lost', ['a-2:1']]] };
    await a.receive([lost], 'backup');
    expect(a.names.actor).toBe('a-3');
    expect(await a.edit([rename('New')], 'Rename')).toMatchObject({ actor: 'a-3', n: 1 });
    expect([names(a), a.book().contested]).toEqual([['New'], []]);
    await a.asNewDevice();
    expect((await openBook(disk, world('x'), editor)).names.actor).toBe('a-4');
  });

  it('keeps updates of a newer version, passes them on and says so', async () => {
    const [a] = await twoBooks();
    const newer = { v: 2, actor: 'z', n: 1, more: true };
    expect(await a.receive([newer], 'z')).toEqual({ added: 1, known: 0, newer: 1 });
    expect([a.newer, (await a.updates()).at(-1)]).toEqual([1, newer]);
    expect(await a.receive([newer], 'z')).toEqual({ added: 0, known: 1, newer: 0 });
  });

  it('that comes while an edit waits is not taken for seen', async () => {
    const [a, b] = await twoBooks();
    await b.edit([rename('B')], 'B');
    const news = await b.updates(a.heads());
    // The edit is asked for on a screen that shows "Bend"; the merge runs first.
    const merged = a.receive(news, 'b');
    const edited = a.edit([rename('A')], 'A');
    await Promise.all([merged, edited]);
    expect(
      a
        .book()
        .contested[0]?.values.map(({ value }) => value)
        .sort(),
    ).toEqual(['A', 'B']);
  });
});
