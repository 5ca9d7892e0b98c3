import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { applyUpdate, composeDraft, emptyState, finish, snapshotOf, type Update } from '../../src/book/merge/index.ts';
import { main } from '../../src/cli/main.ts';
import { logLines, logOfBook } from '../../src/io/book-file/log/index.ts';
import { sha256, writeBookFile } from '../../src/io/index.ts';
import { sampleBook, samplePhotos } from '../helpers/sample-book.ts';

let folder = '';
const path = (name: string): string => join(folder, name);
const asked = { crashes: true, patientPhotos: true };
const hashes = [await sha256(samplePhotos.jpeg), await sha256(samplePhotos.png)];
const photo = async (hash: string) =>
  hash === hashes[0] ? samplePhotos.jpeg : hash === hashes[1] ? samplePhotos.png : null;

/** A district's book and two copies that were edited apart: both renamed a site, one wrote notes, one set patients. */
const base = logOfBook(sampleBook('a note', hashes), { actor: 'desk', who: 'Desk', device: 'desk', atMs: 1000 });
const stateOf = (updates: readonly Update[]) => {
  const state = emptyState();
  for (const update of updates) applyUpdate(state, update, 'test');
  return state;
};
function edited(actor: string, sets: Record<string, unknown>[]): Update[] {
  const updates = [...base];
  sets.forEach((set, i) => {
    const draft = composeDraft(stateOf(updates), [{ table: 'sites', id: 's1', set }], {
      who: actor,
      device: actor,
      label: 'edit',
    })!;
    updates.push(finish(draft, actor, i + 1, [2000 + i, 0]));
  });
  return updates;
}
const phone = edited('phone', [{ name: 'Kettle bend' }, { notes: 'loose rock' }]);
const tablet = edited('tablet', [{ name: 'Kettle corner' }, { patients: 3 }]);

const write = async (name: string, updates: readonly Update[], asks = asked): Promise<void> => {
  const log = logLines(updates, asks);
  const book = snapshotOf(stateOf(log.map((line) => JSON.parse(line))));
  await writeFile(path(name), await writeBookFile({ book, log, photo }, { asked: asks, writtenAtMs: 5000 }));
};

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'brinkbook-'));
  await write('phone.brinkbook', phone);
  await write('tablet.brinkbook', tablet);
  await writeFile(path('plain.json'), JSON.stringify(sampleBook('a note', hashes)));
});
afterAll(() => rm(folder, { recursive: true }));

async function run(...args: string[]): Promise<{ code: number; out: string; err: string }> {
  const out = vi.spyOn(process.stdout, 'write').mockReturnValue(true);
  const err = vi.spyOn(process.stderr, 'write').mockReturnValue(true);
  try {
    const code = await main(['book', ...args]);
    return { code, out: out.mock.calls.map(String).join(''), err: err.mock.calls.map(String).join('') };
  } finally {
    out.mockRestore();
    err.mockRestore();
  }
}

describe('book check', () => {
  it('says what a file holds', async () => {
    const { code, out, err } = await run('check', path('phone.brinkbook'));
    expect([code, err]).toEqual([0, '']);
    expect(out).toMatch(/phone\.brinkbook: a whole book file of a note, checked to the last byte\n/);
    expect(out).toMatch(/edits +\d+\n/);
    expect(out).toMatch(/sites +2 and 1 deleted\n/);
    const json = JSON.parse((await run('check', path('plain.json'), '--json')).out);
    expect([json.form, json.photos, json.edits, json.tables.sites]).toEqual([
      'plain book',
      null,
      null,
      { there: 2, deleted: 1 },
    ]);
  });

  it('refuses a file whose plain book is not what its log says', async () => {
    const book = snapshotOf(stateOf(phone));
    book.tables.sites[0]!.patients = 9;
    const bytes = await writeBookFile({ book, log: logLines(phone, asked), photo }, { asked, writtenAtMs: 5000 });
    await writeFile(path('bent.brinkbook'), bytes);
    const { code, out, err } = await run('check', path('bent.brinkbook'));
    expect([code, out]).toEqual([1, '']);
    expect(err).toMatch(
      /has sites "s1" otherwise in its plain book than in its log; take another copy of the book\.\n$/,
    );
  });
});

describe('book merge', () => {
  it('gives the same book in either order, keeps every edit, and shows what people differ on', async () => {
    const both = await run(
      'merge',
      path('phone.brinkbook'),
      path('tablet.brinkbook'),
      '--out',
      path('ab.brinkbook'),
      '--json',
    );
    expect([both.code, both.err]).toEqual([0, '']);
    expect(JSON.parse(both.out)).toMatchObject({ edits: base.length + 4, toA: 2, toB: 2, contested: 1 });
    await run('merge', path('tablet.brinkbook'), path('phone.brinkbook'), '--out', path('ba.brinkbook'));
    const found = async (name: string) => JSON.parse((await run('check', path(name), '--json')).out);
    const { file: _a, writtenAt: _aAt, ...ab } = await found('ab.brinkbook');
    const { file: _b, writtenAt: _bAt, ...ba } = await found('ba.brinkbook');
    expect(ab).toEqual(ba);
    expect(ab.contested).toEqual([{ table: 'sites', id: 's1', field: 'name', values: 2 }]);
    expect(ab.photos).toBe(2);
    await run('export', path('ab.brinkbook'), '--as', 'geojson', '--out', path('ab.geojson'));
    const site = JSON.parse(await readFile(path('ab.geojson'), 'utf8')).features[0];
    expect(site.properties).toMatchObject({ notes: 'loose rock', patients: 3, contested: ['name'] });
  });

  it('takes a copy that left crash records behind, and keeps those of the other', async () => {
    await write('shared.brinkbook', phone, { crashes: false, patientPhotos: false });
    const check = JSON.parse((await run('check', path('shared.brinkbook'), '--json')).out);
    expect([check.tables.crashes.there, check.photos, check.leftOut.crashes]).toEqual([0, 1, true]);
    const raw = await readFile(path('shared.brinkbook'));
    expect(raw.includes('2020-01-02')).toBe(false);
    await run('merge', path('shared.brinkbook'), path('tablet.brinkbook'), '--out', path('joined.brinkbook'));
    const joined = JSON.parse((await run('check', path('joined.brinkbook'), '--json')).out);
    expect([joined.tables.crashes.there, joined.photos, joined.edits]).toEqual([1, 2, base.length + 4]);
  });

  it('refuses two edits under one number, and leaves the file that was there as it was', async () => {
    const copy = edited('phone', [{ name: 'Another name' }]);
    await write('copy.brinkbook', copy);
    await writeFile(path('there.brinkbook'), 'was here');
    const { code, err } = await run(
      'merge',
      path('phone.brinkbook'),
      path('copy.brinkbook'),
      '--out',
      path('there.brinkbook'),
    );
    expect(code).toBe(1);
    expect(err).toMatch(/is not the one that this book holds under that number/);
    expect(await readFile(path('there.brinkbook'), 'utf8')).toBe('was here');
    expect((await readdir(folder)).filter((name) => name.includes('.part-'))).toEqual([]);
  });

  it('refuses what has no history', async () => {
    const plain = await run('merge', path('plain.json'), path('phone.brinkbook'), '--out', path('x'));
    expect([plain.code, plain.out]).toEqual([1, '']);
    expect(plain.err).toMatch(/plain book without the history/);
    const book = sampleBook();
    await writeFile(path('copy'), await writeBookFile({ book, log: null, photo }, { asked, writtenAtMs: 1 }));
    expect((await run('merge', path('copy'), path('phone.brinkbook'), '--out', path('x'))).err).toMatch(
      /is a reading copy/,
    );
  });
});

describe('book export', () => {
  it.each([
    ['geojson', /"FeatureCollection"/],
    ['gpx', /<gpx version="1\.1"/],
    ['kml', /<kml /],
    ['csv', /^\uFEFFtable,id,name/],
    ['neighbour', /^<!doctype html>/],
  ])('as %s: crash points and patient photos stay behind unless asked for', async (format, head) => {
    const { code, out, err } = await run('export', path('phone.brinkbook'), '--as', format);
    expect([code, err]).toEqual([0, '']);
    expect(out).toMatch(head);
    expect(out).not.toMatch(/2020-01-02|image\/png/);
    const more = format === 'neighbour' ? '--with-patient-photos' : '--with-crashes';
    expect((await run('export', path('phone.brinkbook'), '--as', format, more)).out).toMatch(/2020-01-02|image\/png/);
    expect((await run('export', path('phone.brinkbook'), '--as', format, '--sites', 's2')).out).not.toContain('Kettle');
  });

  it.each<[string[], number, RegExp]>([
    [[], 2, /What to do with the book is missing; it is one of check, merge, export/],
    [['burn'], 2, /"burn" is nothing to do with a book/],
    [['check'], 2, /check takes one file, but 0 came/],
    [['merge', 'a', 'b'], 2, /--out is missing/],
    [['export', 'a'], 2, /--as is missing; it is one of geojson, gpx, kml, csv, neighbour/],
    [['export', 'a', '--as', 'pdf'], 2, /--as "pdf" is not one of/],
    [['export', 'a', '--as', 'neighbour', '--with-crashes'], 2, /does not go with neighbour/],
    [['export', 'a', '--as', 'gpx', '--with-patient-photos'], 2, /--with-patient-photos goes with neighbour alone/],
    [['export', 'a', '--as', 'csv', '--units', 'us'], 2, /--units goes with neighbour alone/],
    [['check', '/nowhere/x.brinkbook'], 1, /there is no such file/],
    [['check', 'package.json'], 1, /package\.json is no book/],
    [['check', 'README.md'], 1, /neither a book file nor a plain book/],
  ])('%j ends with one sentence', async (args, wanted, words) => {
    const { code, out, err } = await run(...args);
    expect([code, out]).toEqual([wanted, '']);
    expect(err).toMatch(words);
    expect(err.trim().split('\n')).toHaveLength(1);
  });

  it('of a site that is not there names those that are', async () => {
    const { code, err } = await run('export', path('plain.json'), '--as', 'csv', '--sites', 's1,nope');
    expect(code).toBe(1);
    expect(err).toMatch(/has no site "nope"; its sites are s1, s2\./);
  });

  it('into a file says what went out and what stayed behind', async () => {
    const { code, out } = await run('export', path('plain.json'), '--as', 'csv', '--out', path('out.csv'));
    expect([code, out]).toEqual([0, `${path('out.csv')}: 2 sites; 1 crash point left out\n`]);
    expect(await readFile(path('out.csv'), 'utf8')).not.toContain('2020-01-02');
  });

  it.each<[string, () => Promise<unknown>, RegExp]>([
    [
      'newer.json',
      () => writeFile(path('newer.json'), '{"schema":"brinkbook/book@99","tables":{}}'),
      /is a book of version 99, this program reads up to version 1; update the program\./,
    ],
    [
      'cut.brinkbook',
      async () => writeFile(path('cut.brinkbook'), (await readFile(path('phone.brinkbook'))).subarray(0, 700)),
      /is damaged or no book file; take another copy/,
    ],
    ['empty.brinkbook', () => writeFile(path('empty.brinkbook'), ''), /neither a book file nor a plain book/],
    ['folder.brinkbook', () => mkdir(path('folder.brinkbook')), /cannot be read: it is a folder; check the path\./],
  ])('of %s is refused by every command, and nothing is written', async (name, make, words) => {
    await make();
    for (const args of [
      ['check', path(name)],
      ['export', path(name), '--as', 'csv', '--out', path('none')],
      ['merge', path('phone.brinkbook'), path(name), '--out', path('none')],
    ]) {
      const { code, out, err } = await run(...args);
      expect([code, out], args[0]).toEqual([1, '']);
      expect(err).toMatch(words);
    }
    expect(await readdir(folder)).not.toContain('none');
  });

  it('into a place that cannot be written says so', async () => {
    const { code, err } = await run('export', path('plain.json'), '--as', 'csv', '--out', path('no/such/place.csv'));
    expect([code, err.includes('there is no such folder')]).toEqual([1, true]);
  });
});
