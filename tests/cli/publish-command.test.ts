import { createHash } from 'node:crypto';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { type Book, emptyBook, type PhotoRecord, readRecord, type TableName } from '../../src/book/index.ts';
import { main } from '../../src/cli/main.ts';
import { type Publication, readPublication } from '../../src/io/publish/index.ts';
import { rangeServer } from '../helpers/range-server.ts';
import { demoFileOptions, writeSmallBook } from '../helpers/small-district.ts';

const folder = mkdtempSync(join(tmpdir(), 'brinkbook-publish-'));
const out = join(folder, 'out');
const bookPath = join(folder, 'book.brinkbook');
afterAll(() => rmSync(folder, { recursive: true }));

/** A built app as small as can be: a page that names a module, which names another, and the service worker's list. */
const app = { folder: () => join(folder, 'app'), policy: "default-src 'none'; script-src 'self'" };
const page =
  '<!doctype html><html><head><meta charset="utf-8" /><script src="../assets/call-1.js"></script></head></html>';

/** A JPEG by its first bytes, told apart by its last ones. */
const jpeg = (body: string): Uint8Array<ArrayBuffer> =>
  new Uint8Array([0xff, 0xd8, 0xff, 0xdb, ...new TextEncoder().encode(body), 0xff, 0xd9]);
const hashOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');
const pictures = {
  cleared: jpeg('cleared-picture'),
  patient: jpeg('patient-picture'),
  plate: jpeg('plate-picture'),
  unlooked: jpeg('unlooked-picture'),
};

function photo(id: string, siteId: string, bytes: Uint8Array, said: Partial<PhotoRecord>): PhotoRecord {
  const facts = { hash: hashOf(bytes), type: 'image/jpeg', widthPx: 10, heightPx: 10, sizeBytes: bytes.length };
  return record('photos', {
    id,
    siteId,
    ...facts,
    caption: `SECRET-${id}`,
    showsPatient: false,
    ...said,
  }) as PhotoRecord;
}

function record(table: TableName, fields: object): unknown {
  return readRecord(table, fields, 'a record of this test');
}

/** The demo's book with secrets in it wherever something may be kept that is nobody else's business. */
function withSecrets(book: Book): Book {
  const { tables } = book;
  const [bridge] = tables.sites;
  const at = { lon: -128.001, lat: 44.001 };
  const more = (table: TableName, fields: object): unknown[] => [...tables[table], record(table, fields)];
  const made = {
    ...tables,
    sites: [
      bridge,
      { ...bridge, id: 'CON', name: '<script>alert(1)</script>' },
      { ...bridge, id: 'far', name: 'Far off', place: { ...bridge!.place, lon: -128.4 } },
      { ...bridge, id: 'gone', name: 'SECRET-deleted-site', deleted: true },
    ],
    photos: [
      photo('cleared', bridge!.id, pictures.cleared, { showsPlate: false, caption: 'the culvert' }),
      photo('patient', bridge!.id, pictures.patient, { showsPatient: true, showsPlate: false }),
      photo('same-bytes', bridge!.id, pictures.patient, { showsPlate: false }),
      photo('plate', bridge!.id, pictures.plate, { showsPlate: true }),
      photo('unlooked', bridge!.id, pictures.unlooked, {}),
    ],
    crashes: [record('crashes', { id: 'SECRET-crash', on: '1999-09-09', at, severity: 'killed' })],
    drills: more('drills', { id: 'd9', on: '2026-01-01', crew: 'SECRET-crew', people: 3, did: 'SECRET-drill' }),
    sources: more('sources', { id: 's9', name: 'SECRET-source', kind: 'other', address: '/home/SECRET-user/dem.tif' }),
    measurements: [
      record('measurements', {
        ...{ id: 'r9', siteId: bridge!.id, by: 'Officer B', on: '2026-05-01', notes: 'SECRET-note-of-reading' },
        reading: { quantity: 'angleDeg', value: 33 },
      }),
    ],
    settings: tables.settings.map((one) => ({ ...one, procedures: 'SECRET-procedures' })),
  };
  const values = (...all: string[]): Book['contested'][number]['values'] =>
    all.map((value) => ({ value, who: 'SECRET-who', device: 'SECRET-device', atMs: 1 }));
  const contested = [
    { table: 'sites' as const, id: bridge!.id, field: 'radio', values: values('one', 'two') },
    { table: 'crashes' as const, id: 'SECRET-crash', field: 'severity', values: values('killed', 'serious') },
  ];
  return { ...book, tables: made as unknown as Book['tables'], contested };
}

/** Called whenever the command says how far it has come. */
let onProgress = (): void => {};

async function publish(...args: string[]): Promise<{ code: number; out: string; error: string }> {
  const said = { out: '', error: '' };
  const hear = (key: 'out' | 'error') => (text: unknown) => {
    said[key] += String(text);
    if (key === 'error') onProgress();
    return true;
  };
  const spies = [
    vi.spyOn(process.stdout, 'write').mockImplementation(hear('out')),
    vi.spyOn(process.stderr, 'write').mockImplementation(hear('error')),
  ];
  try {
    return { code: await main(['publish', ...args], app), ...said };
  } finally {
    for (const spy of spies) spy.mockRestore();
  }
}

const files = (): string[] =>
  readdirSync(out, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name));
/** Every byte of the folder, packed files unpacked. */
const all = (): Buffer =>
  Buffer.concat(files().map((path) => (path.endsWith('.gz') ? gunzipSync(readFileSync(path)) : readFileSync(path))));
const list = (): Publication => readPublication(readFileSync(join(out, 'data/publication.json'), 'utf8'), 'the list');
/** How a picture stands in a sheet. */
const inSheet = (bytes: Uint8Array): string => Buffer.from(bytes).toString('base64');

beforeAll(async () => {
  mkdirSync(join(folder, 'app/call'), { recursive: true });
  mkdirSync(join(folder, 'app/assets'));
  writeFileSync(join(folder, 'app/call/index.html'), page);
  writeFileSync(join(folder, 'app/index.html'), 'the desk');
  writeFileSync(join(folder, 'app/assets/call-1.js'), 'import("./part-2.js")\n//# sourceMappingURL=call-1.js.map');
  writeFileSync(join(folder, 'app/assets/part-2.js'), 'export {}');
  writeFileSync(join(folder, 'app/assets/desk-3.js'), 'export {}');
  writeFileSync(join(folder, 'app/sw.js'), 'const f=JSON.parse(`{"/index.html":"0123456789ab"}`),v=`ba9876543210`;');
  await writeSmallBook(
    bookPath,
    ['bridge-head'],
    withSecrets,
    new Map(Object.values(pictures).map((bytes) => [hashOf(bytes), bytes])),
  );
});

describe('publish', () => {
  test('writes the whole folder, tells what it left out, and that anyone can read it', async () => {
    const { code, out: said, error } = await publish('--book', bookPath, ...demoFileOptions, '--out', out);
    expect([code, error]).toEqual([0, expect.stringContaining('1 of 3: ')]);
    expect(said).toContain('3 sites, 1 of them not worked out:');
    expect(said).toContain(
      'Anyone with the address can read it. Left out: 1 crash point, 2 photos that may show a patient, 2 photos not said to be free of number plates.',
    );
    expect(readdirSync(out).sort()).toEqual(
      ['assets', 'brinkbook-published.json', 'call', 'data', 'index.html', 'sheets', 'sw.js'].sort(),
    );
    expect(readdirSync(join(out, 'assets')).sort()).toEqual(['call-1.js', 'part-2.js']);
    expect(readdirSync(folder).sort()).toEqual(['app', 'book.brinkbook', 'out']);
  });

  test('nothing that nobody asked for is in any byte of it', () => {
    const bytes = all();
    // What is meant to be there is found this way.
    expect(bytes.includes('the culvert')).toBe(true);
    expect(bytes.includes(inSheet(pictures.cleared))).toBe(true);
    expect(readdirSync(join(out, 'data/photos'))).toEqual([hashOf(pictures.cleared)]);
    for (const secret of ['SECRET', '1999-09-09', tmpdir(), process.cwd()])
      expect([secret, bytes.includes(secret)]).toEqual([secret, false]);
    for (const name of ['patient', 'plate', 'unlooked'] as const) {
      expect(bytes.includes(Buffer.from(pictures[name]))).toBe(false);
      expect(bytes.includes(inSheet(pictures[name]))).toBe(false);
    }
    for (const path of files()) expect(path).not.toContain('SECRET');
  });

  test('names of files come from ids, hostile names stay texts', () => {
    expect(readdirSync(join(out, 'sheets')).sort()).toEqual(['all-sheets.html', 'bridge-head.html', 'site-1.html']);
    expect(list().stems).toMatchObject({ CON: 'site-1', 'bridge-head': 'bridge-head' });
    for (const path of files().filter((one) => one.endsWith('.html')))
      expect(readFileSync(path, 'utf8')).not.toContain('<script>alert');
  });

  test('a site that cannot be worked out is listed with its reason, and counted as such', () => {
    const { notWorkedOut, pack } = list();
    expect(notWorkedOut).toEqual([{ id: 'far', why: expect.stringMatching(/\.$/) }]);
    expect(pack.withoutStudy).toEqual(['far']);
    expect(pack.sites.map(({ id }) => id).sort()).toEqual(['CON', 'bridge-head', 'far']);
    expect(readFileSync(join(out, 'index.html'), 'utf8')).toMatch(
      /Far off<\/bdi><\/a> <small>\d+° \d+\.\d+′ N, \d+° \d+\.\d+′ W; not worked out: /,
    );
  });

  test('the page says where its list is and carries its policy; the worker keeps just these files', () => {
    const text = readFileSync(join(out, 'call/index.html'), 'utf8');
    expect(text).toContain('<meta name="brinkbook-published" content="../data/publication.json" />');
    expect(text).toContain(`http-equiv="Content-Security-Policy" content="${app.policy}"`);
    const worker = readFileSync(join(out, 'sw.js'), 'utf8');
    const kept = JSON.parse(/JSON\.parse\(`(.*?)`\)/.exec(worker)![1]!) as Record<string, string>;
    expect(Object.keys(kept).sort()).toEqual(['/assets/call-1.js', '/assets/part-2.js', '/call/index.html']);
    for (const [path, revision] of Object.entries(kept))
      expect(hashOf(readFileSync(join(out, path))).slice(0, 12)).toBe(revision);
    expect(worker).not.toContain('ba9876543210');
    expect(all().includes('sourceMappingURL')).toBe(false);
  });

  test('what is asked for by name goes out', async () => {
    const asked = ['--with', 'crashes,patient-photos', '--with', 'plate-photos'];
    const { code, out: said } = await publish('--book', bookPath, ...demoFileOptions, '--out', out, ...asked);
    expect([code, said.includes('Left out')]).toEqual([0, false]);
    const bytes = all();
    for (const there of ['1999-09-09', 'SECRET-plate', 'SECRET-patient']) expect(bytes.includes(there)).toBe(true);
    for (const never of [
      'SECRET-crew',
      'SECRET-who',
      'SECRET-user',
      'SECRET-procedures',
      'SECRET-note',
      'SECRET-deleted',
    ])
      expect([never, bytes.includes(never)]).toEqual([never, false]);
  });

  test('a failure leaves the former publication as it was, and nothing beside it', async () => {
    const before = all();
    const { code, error } = await publish(
      '--book',
      bookPath,
      '--elevation',
      bookPath,
      ...demoFileOptions.slice(4),
      '--out',
      out,
    );
    expect(code).toBe(1);
    expect(error.trim().split('\n')).toHaveLength(1);
    expect(all().equals(before)).toBe(true);
    expect(readdirSync(folder).sort()).toEqual(['app', 'book.brinkbook', 'out']);
  });

  test.each([
    [['--out', out], 2, /--book is missing/],
    [['--book', bookPath], 2, /--out is missing/],
    [['--book', bookPath, '--out', folder, ...demoFileOptions], 1, /is not empty and was not written by this command/],
    [['--book', bookPath, '--out', bookPath, ...demoFileOptions], 1, /is no folder/],
    [
      ['--book', bookPath, '--out', join(folder, 'no/such/place'), ...demoFileOptions],
      1,
      /the folder above it is not there/,
    ],
    [
      ['--book', bookPath, '--out', join(folder, 'new'), '--with', 'everything', ...demoFileOptions],
      2,
      /--with "everything" is not one of/,
    ],
    [['--book', bookPath, '--out', join(folder, 'new')], 2, /--elevation is missing/],
  ])('refuses %j', async (args, code, sentence) => {
    const refused = await publish(...args);
    expect([refused.code, refused.out]).toEqual([code, '']);
    expect(refused.error).toMatch(sentence);
    expect(readdirSync(folder).sort()).toEqual(['app', 'book.brinkbook', 'out']);
  });

  test('a raster behind an address leaves nothing of its key; one that stops answering ends it, and no site is left out for that', async () => {
    const server = await rangeServer(readFileSync(demoFileOptions[3]!));
    const raster = ['--elevation', `${server.url}?key=SECRET-key`, ...demoFileOptions.slice(4)];
    try {
      const { code } = await publish('--book', bookPath, ...raster, '--out', out);
      expect([code, all().includes('SECRET-key'), all().includes('ground.tif')]).toEqual([0, false, true]);
      const before = all();
      onProgress = () => {
        server.manners.status = 503;
      };
      const failed = await publish('--book', bookPath, ...raster, '--out', out);
      expect([failed.code, failed.error]).toEqual([1, expect.stringMatching(/answered 503/)]);
      expect(all().equals(before)).toBe(true);
    } finally {
      onProgress = () => {};
      await server.close();
    }
  });

  test('a book without sites is refused', async () => {
    const path = join(folder, 'empty.json');
    writeFileSync(path, JSON.stringify(emptyBook()));
    const { code, error } = await publish('--book', path, '--out', join(folder, 'new'), ...demoFileOptions);
    rmSync(path);
    expect([code, error]).toEqual([1, expect.stringContaining('holds no site')]);
  });
});
