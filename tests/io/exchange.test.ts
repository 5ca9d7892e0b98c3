import { dsvFormat } from 'd3-dsv';
import { zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { type Book, emptyBook, live } from '../../src/book/index.ts';
import { applyUpdate, composeDraft, emptyState, finish, snapshotOf } from '../../src/book/merge/index.ts';
import {
  changesOf,
  markFrom,
  readPlaces,
  siteFrom,
  writeCsv,
  writeGeoJson,
  writeGpx,
  writeKml,
  writeNeighbour,
} from '../../src/io/exchange/index.ts';
import { cellText, inertCell } from '../../src/io/exchange/inert.ts';
import { placedTables } from '../../src/io/exchange/placed.ts';
import { sha256 } from '../../src/io/index.ts';
import { UserError } from '../../src/units/index.ts';
import { hostileTexts, sampleBook, samplePhotos } from '../helpers/sample-book.ts';

const whole = { sites: null, crashes: true };
const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const context = (book: Book = emptyBook()) => {
  let n = 0;
  return { book, newId: () => `new-${++n}` };
};
const read = (text: string, name: string, book?: Book) => readPlaces(bytes(text), name, context(book));
const hashes = [await sha256(samplePhotos.jpeg), await sha256(samplePhotos.png)] as const;
const photo = async (hash: string) =>
  hash === hashes[0] ? samplePhotos.jpeg : hash === hashes[1] ? samplePhotos.png : null;
const neighbour = (book: Book, patientPhotos = false) =>
  writeNeighbour(book, { sites: null, patientPhotos, units: 'us', photo });

/** Characters that turn or hide text; none may stand in a file that goes out. */
const tricks = /[\u061C\u200B-\u200F\u202A-\u202E\u2060-\u206F]/;

describe('book to GeoJSON and back', () => {
  it.each(['a note', ...hostileTexts, 'x'.repeat(20_000)])('keeps every record that has a place: %#', (text) => {
    const book = sampleBook(text);
    const preview = read(writeGeoJson(book, whole), 'out.geojson');
    expect([preview.format, preview.skipped, preview.remarks]).toEqual(['GeoJSON', [], []]);
    for (const table of placedTables) {
      const back = preview.items.flatMap(({ ready }) => (ready?.table === table ? [ready.record] : []));
      expect(back.length, table).toBeGreaterThan(0);
      expect(back).toEqual(live(book, table));
    }
    expect(preview.items.every(({ question, exists }) => question === null && !exists)).toBe(true);
  });

  it('says which records the book already has, and which lie outside the district', () => {
    const book = sampleBook();
    const far = structuredClone(book) as Book;
    far.tables.sites[0]!.place.lon = -120;
    far.tables.settings[0]!.bounds = { west: -121, south: 40, east: -119, north: 45 };
    const preview = read(writeGeoJson(far, whole), 'out.geojson', book);
    expect(preview.items.every(({ exists }) => exists)).toBe(true);
    expect(preview.items[0]!.question?.code).toBe('outside');
    expect(preview.items[1]!.question).toBeNull();
  });

  it('names fields that are contested', () => {
    const book: Book = {
      ...sampleBook(),
      contested: [{ table: 'sites', id: 's1', field: 'notes', values: [] }],
    };
    const out = JSON.parse(writeGeoJson(book, whole));
    expect(out.features[0].properties.contested).toEqual(['notes']);
    expect(out.features[1].properties.contested).toBeUndefined();
  });
});

describe('crash points and patient photos', () => {
  const book = sampleBook('a note', hashes);
  const writers = { writeGeoJson, writeGpx, writeKml, writeCsv };

  it.each(Object.entries(writers))('%s leaves crashes out unless asked for', (_name, write) => {
    expect(write(book, { sites: null, crashes: false })).not.toMatch(/2020-01-02|crash/i);
    expect(write(book, whole)).toMatch(/2020-01-02/);
  });

  it.each(Object.entries(writers))('%s takes only chosen sites and what belongs to them', (_name, write) => {
    const named = structuredClone(book) as Book;
    named.tables.settings[0]!.district = 'Tamarrow';
    const out = write(named, { sites: ['s2'], crashes: true });
    expect(out).toContain('Plain');
    expect(out).not.toMatch(/a note|tree|2020-01-02|555-0100|Gone/);
  });

  it('stand on no neighbour’s page unless asked for', async () => {
    const page = await neighbour(book);
    expect(page).toContain('Left out: 1 photo that shows a patient.');
    expect([page.match(/data:image\/jpeg/g)?.length, page.match(/data:image\/png/g)?.length]).toEqual([1, undefined]);
    expect(page).not.toMatch(/2020-01-02/);
    expect(await neighbour(book, true)).toContain('data:image/png');
  });
});

describe('a neighbour’s page', () => {
  it('says where, who checked, what was measured, and what it does not hold', async () => {
    const page = await neighbour(sampleBook('Long bend', hashes));
    for (const words of [
      '44.00100, -128.01000',
      '44° 0.060′ N, 128° 0.600′ W',
      'Drops toward',
      '166° true',
      '2026-05-02, walked',
      'angle of the slope over 5 m: 33°',
      'not field-verified',
      'Verify on site',
      'are not on this page',
      'landing zone',
    ]) {
      expect(page).toContain(words);
    }
    expect(page).not.toMatch(/<script|https?:|\bsafe\b|adequate|approved/i);
    expect(page).not.toContain('Gone');
  });
});

describe('a site that changed since its survey', () => {
  const book = sampleBook('word');
  const slid = structuredClone(book) as Book;
  slid.tables.events[0]!.on = '2026-06-01';

  it('says so first, in every format', async () => {
    for (const out of [writeGpx(slid, whole), writeKml(slid, whole), await neighbour(slid)]) {
      expect(out).toContain('STOP: changed since survey: word (slide, 2026-06-01)');
    }
    expect(JSON.parse(writeGeoJson(slid, whole)).features[0].properties.changedSince).toBe('2026-06-01');
    expect(writeCsv(slid, whole)).toContain('2026-05-02,walked,2026-06-01');
  });

  it('says nothing where somebody was there after the change; a check at the desk does not count', async () => {
    expect(await neighbour(book)).not.toContain('changed since');
    const desk = structuredClone(slid) as Book;
    desk.tables.signOffs.push({ ...desk.tables.signOffs[0]!, id: 'c2', method: 'desk', on: '2026-07-01' });
    const page = await neighbour(desk);
    expect(page).toContain('STOP: changed since survey');
    expect(page).not.toContain('2026-07-01');
  });
});

describe('hostile text is inert', () => {
  const plain = sampleBook('word', hashes);
  const tags = (text: string): string[] => text.match(/<[^>]*>/g)!.map((tag) => tag.replace(/"[^"]*"/g, '""'));

  it.each(hostileTexts.map((text) => [JSON.stringify(text), text]))('%s', async (_shown, text) => {
    const book = sampleBook(text, hashes);
    for (const write of [writeGpx, writeKml]) {
      const out = write(book, whole);
      expect(tags(out)).toEqual(tags(write(plain, whole)));
      expect(out).not.toMatch(tricks);
      expect(read(out, 'out.xml').items.length).toBeGreaterThan(0);
    }
    const page = await neighbour(book);
    expect(tags(page)).toEqual(tags(await neighbour(plain)));
    expect(page).not.toMatch(tricks);
    const json = writeGeoJson(book, whole);
    expect(json).not.toMatch(/[<>&\u2028\u2029]/);
    expect(json).not.toMatch(tricks);
    const csv = writeCsv(book, whole);
    expect(csv.slice(1)).not.toMatch(tricks);
    for (const delimiter of [',', ';', '\t', '|']) {
      for (const cell of dsvFormat(delimiter).parseRows(csv.slice(1)).flat()) {
        if (/^[\s"]*[=+\-@＝＋－＠\t\r]/.test(cell)) expect(Number(cell.split(',')[0])).not.toBeNaN();
      }
    }
  });

  it('comes back out of a CSV cell as it was', () => {
    for (const text of [...hostileTexts, "'=1", "''=1", "it's", "'quoted'", ' =1', 'a;=1', "a;'=1", '|=1', '-', '=']) {
      const kept = text
        .replace(new RegExp(tricks, 'g'), '')
        .replaceAll('\u0000', '')
        .replaceAll('\u0007', '')
        .trimStart();
      expect(cellText(inertCell(text))).toBe(kept);
    }
  });

  it('of a megabyte is refused by the book and cut by an import', () => {
    const long = 'y'.repeat(1_000_000);
    expect(() => sampleBookWithName(long)).toThrow(UserError);
    const json = JSON.stringify({
      type: 'Feature',
      geometry: { type: 'Point', coordinates: [-128, 44] },
      properties: { name: long, notes: long },
    });
    const [item] = read(json, 'in.geojson').items;
    expect([item!.name.length, item!.notes.length]).toEqual([200, 20_000]);
    const before = performance.now();
    inertCell('\n'.repeat(1_000_000));
    inertCell(`${' '.repeat(1_000_000)}x`);
    expect(performance.now() - before).toBeLessThan(5000);
  });

  function sampleBookWithName(name: string): Book {
    const book = structuredClone(sampleBook()) as Book;
    book.tables.sites[0]!.name = name;
    const out = read(writeGeoJson(book, whole), 'big.geojson');
    if (out.skipped.length > 0) throw new UserError('test', out.skipped[0]!.why);
    return book;
  }
});

describe('places of other programs', () => {
  const point = (lon: number, lat: number, properties: object = {}) =>
    JSON.stringify({
      type: 'FeatureCollection',
      features: [{ type: 'Feature', properties, geometry: { type: 'Point', coordinates: [lon, lat] } }],
    });

  it('become sites whose side is wanted, or marks where they say a kind', () => {
    const [site] = read(point(-128.01, 44.01, { name: 'Bend', desc: 'deep' }), 'a.geojson').items;
    expect(site).toMatchObject({ name: 'Bend', notes: 'deep', ready: null, wants: 'side' });
    const [ready] = read(point(-128.01, 44.01, { name: 'Bend', sideAzimuthDeg: 90 }), 'a.geojson').items;
    expect(ready!.ready).toMatchObject({
      table: 'sites',
      record: { id: 'new-1', name: 'Bend', place: { lon: -128.01, lat: 44.01, sideAzimuthDeg: 90 } },
    });
    const [mark] = read(point(-128.01, 44.01, { kind: 'Tree' }), 'a.geojson').items;
    expect(mark!.ready).toMatchObject({ table: 'marks', record: { kind: 'tree', siteId: null } });
  });

  it('become sites and marks once somebody has said what is missing', () => {
    const [item] = read(point(-128.01, 44.01, { name: 'Bend', desc: 'deep' }), 'a.geojson').items;
    const site = siteFrom(item!, { sideAzimuthDeg: 90, roadName: 'Old Spur' }, 'id-1', 'a.geojson');
    expect(site.record).toMatchObject({
      id: 'id-1',
      name: 'Bend',
      notes: 'deep',
      roadName: 'Old Spur',
      place: { lon: -128.01, lat: 44.01, sideAzimuthDeg: 90 },
    });
    expect(() => siteFrom(item!, { sideAzimuthDeg: 400, roadName: null }, 'id-1', 'a.geojson')).toThrow(
      /unusable place\.sideAzimuthDeg/,
    );
    const mark = markFrom(item!, 'rock', 's1', 'id-2', 'a.geojson');
    expect(mark.record).toMatchObject({ id: 'id-2', siteId: 's1', kind: 'rock', name: 'Bend' });
  });

  it('are questioned where they look swapped or lie outside the district', () => {
    const book = sampleBook();
    const code = (lon: number, lat: number) =>
      read(point(lon, lat), 'a.geojson', book).items[0]?.question?.code ?? null;
    expect([code(-128.01, 44.01), code(44.01, -128.01), code(128.01, 44.01), code(-120, 44)]).toEqual([
      null,
      'swapped',
      'sign',
      'outside',
    ]);
    expect(read(point(0, 95), 'a.geojson').items[0]!.question?.code).toBe('swapped');
    expect(read(point(500, 500), 'a.geojson').skipped[0]!.why).toMatch(/not on the Earth/);
  });

  it('are read from GPX: waypoints; tracks are named as left out', () => {
    const preview = read(
      `<?xml version="1.0"?><gpx version="1.1" xmlns="http://www.topografix.com/GPX/1/1"><wpt lat="44.01" lon="-128.01"><ele>300</ele><name>A &amp; B</name><desc>note</desc></wpt><wpt lat="44.02" lon="-128.02"><name>tree one</name><type>tree</type></wpt><trk><name>Drive</name><trkseg><trkpt lat="44" lon="-128"/><trkpt lat="44.1" lon="-128"/></trkseg></trk></gpx>`,
      'a.gpx',
    );
    expect(preview.items.map(({ name, wants, notes }) => [name, wants, notes])).toEqual([
      ['A & B', 'side', 'note'],
      ['tree one', null, ''],
    ]);
    expect(preview.skipped).toEqual([{ where: 'place 1', why: '"Drive" is no point but a LineString' }]);
  });

  it('are read from KML: points in folders, HTML descriptions as plain text', () => {
    const preview = read(
      `<kml xmlns="http://www.opengis.net/kml/2.2"><Document><Folder><name>f</name><Placemark><name>P</name><description><![CDATA[<b>steep</b> <script>x</script>]]></description><Point><coordinates>-128.01,44.01,0</coordinates></Point></Placemark></Folder><Placemark><name>empty</name></Placemark></Document></kml>`,
      'a.kml',
    );
    expect(preview.items[0]).toMatchObject({ name: 'P', geometry: { type: 'Point', coordinates: [-128.01, 44.01] } });
    expect(preview.items[0]!.notes).not.toMatch(/[<>]/);
    expect(preview.items.length + preview.skipped.length).toBe(2);
  });

  it('are read from a KMZ, of which nothing but its KML is unpacked', () => {
    const kml = bytes(
      '<kml><Placemark><name>P</name><Point><coordinates>-128.01,44.01</coordinates></Point></Placemark></kml>',
    );
    const kmz = zipSync({ 'images/a.png': new Uint8Array(9), 'other.kml': bytes('<kml></kml>'), 'doc.kml': kml });
    const preview = readPlaces(kmz, 'a.kmz', context());
    expect([preview.format, preview.items.length, preview.items[0]!.name]).toEqual(['KML', 1, 'P']);
    expect(() => readPlaces(zipSync({ 'a.txt': kml }), 'a.kmz', context())).toThrow(/zip without a KML/);
    expect(() => readPlaces(kmz.slice(0, 40), 'a.kmz', context())).toThrow(/damaged or no KMZ/);
    const bomb = zipSync({ 'doc.kml': new Uint8Array(70e6) });
    expect(() => readPlaces(bomb, 'a.kmz', context())).toThrow(/unpacks to more than/);
  });

  it('chosen in a preview become one edit', () => {
    const book = sampleBook();
    const { items } = read(writeGeoJson(book, whole), 'out.geojson');
    const sites = items.flatMap(({ ready }) => (ready?.table === 'sites' ? [ready.record] : []));
    const draft = composeDraft(emptyState(), changesOf('sites', sites), { who: 'a', device: 'b', label: 'Import' })!;
    const state = emptyState();
    applyUpdate(state, finish(draft, 'me', 1, [1, 0]), 'test');
    expect(live(snapshotOf(state), 'sites')).toEqual(live(book, 'sites'));
  });

  it.each([
    ['name,lat,lon\nA,44.01,-128.01\n', [-128.01, 44.01]],
    ['Name;Latitude;Longitude\r\nA;44,01;-128,01\r\n', [-128.01, 44.01]],
    ['name\tX\tY\nA\t-128.01\t44.01\n', [-128.01, 44.01]],
    ['name,position\nA,"44° 0.6′ N, 128° 0.6′ W"\n', [-128.01, 44.01]],
    ['\uFEFF"name","lat","lon","note"\n"A ""big"" one","44.01","-128.01","x"\n', [-128.01, 44.01]],
    ['name,lat,lon\n6" pipe,44.01,-128.01\n', [-128.01, 44.01]],
    ['name,usng\nA,9T WJ 7936 7310\n', null],
  ])('are read from CSV: %j', (text, at) => {
    const { items, skipped, format } = read(text, 'a.csv');
    expect([format, items.length, skipped.length]).toEqual(['CSV', 1, 0]);
    if (at)
      expect((items[0]!.geometry as { coordinates: number[] }).coordinates.map((x) => Number(x.toFixed(7)))).toEqual(
        at,
      );
  });

  it('of CSV: rows without a position are told by number, columns not read by name', () => {
    const { items, skipped, remarks } = read(
      'name,lat,lon,owner\nA,44.01,-128.01,me\nB,,,\n\nC,north,-128,x\nD,-128.01,44.01,x\n',
      'a.csv',
    );
    expect(items.map(({ name, question }) => [name, question?.code ?? null])).toEqual([
      ['A', null],
      ['D', 'swapped'],
    ]);
    expect(skipped.map(({ where }) => where)).toEqual(['row 3', 'row 5']);
    expect(remarks).toEqual(['Columns not read: owner.']);
  });

  it('a table that a book wrote gives its sites with their sides, and names what CSV does not bring', () => {
    const book = sampleBook('=1+1');
    const { items, skipped } = read(writeCsv(book, whole), 'out.csv');
    expect(items.map(({ name, wants }) => [name, wants])).toEqual([
      ['=1+1', null],
      ['Plain', null],
      ['=1+1', null],
    ]);
    expect(items[0]!.ready!.record).toMatchObject({ place: book.tables.sites[0]!.place, notes: '=1+1' });
    expect(skipped).toHaveLength(7);
  });

  it('of a million empty lines are refused before they are looked at', () => {
    expect(() => read(`a,lat,lon${'\n'.repeat(1_000_001)}`, 'bad.csv')).toThrow(/has 1000001 lines, over the 1000000/);
  });

  it('in old letters are read and said to be', () => {
    const { items, remarks } = readPlaces(
      new Uint8Array([...bytes('name,lat,lon\nPe'), 0xf1, ...bytes('a,44,-128\n')]),
      'a.csv',
      context(),
    );
    expect(items[0]!.name).toBe('Peña');
    expect(remarks[0]).toMatch(/Windows-1252/);
  });

  it.each([
    ['', /no row of column names/],
    ['{', /is not JSON/],
    ['{"a":1}', null],
    ['[1,2]', /no GeoJSON/],
    ['{"type":"FeatureCollection","features":3}', /no list of features/],
    [
      '{"type":"FeatureCollection","features":[],"crs":{"type":"name","properties":{"name":"EPSG:32610"}}}',
      /coordinate system of its own/,
    ],
    ['<gpx><wpt lat="44" lon="-128"></gpx>', /not well-formed/],
    ['<gpx><wpt lat="44" lon="-128"/>', /not well-formed/],
    ['<!DOCTYPE gpx [<!ENTITY a "b">]><gpx/>', /document type/],
    ['<html></html>', /neither GPX nor KML/],
    [`<kml>${'<Folder>'.repeat(200)}${'</Folder>'.repeat(200)}</kml>`, /nested more than 100/],
    ['a,b\n1,2\n', /no columns lat and lon/],
    ['name,lat,lon\n"A,44,-128\n', /never closes it in line 2/],
    ['name,lat,lon\n"A"x,44,-128\n"B",44,-128\n', /stray quotation mark in line 2/],
  ])('%j is refused with a sentence', (text, words) => {
    const error = (() => {
      try {
        const preview = read(text, 'bad.file');
        return words === null && preview.items.length === 0 && preview.skipped.length === 1
          ? null
          : new Error('was read');
      } catch (cause) {
        return cause as Error;
      }
    })();
    if (words === null) expect(error).toBeNull();
    else {
      expect(error).toBeInstanceOf(UserError);
      expect(error!.message).toMatch(words);
      expect(error!.message).toMatch(/^bad\.file [^\n]{10,300}\.$/);
    }
  });
});
