import { describe, expect, it } from 'vitest';
import { readCrashes, readPlaces, writeCsv, writeGeoJson, writeGpx, writeKml } from '../../src/io/exchange/index.ts';
import { seededRandom, UserError } from '../../src/units/index.ts';
import { mutated } from '../helpers/mutate.ts';
import { sampleBook } from '../helpers/sample-book.ts';

const RUNS = 4000;
const book = sampleBook('a "note", with <marks>');
const whole = { sites: null, crashes: true };

/** The number of places that a text has, counted another way than the readers do; null where nothing can be said. */
const counts: Readonly<Record<string, (text: string) => number | null>> = {
  GeoJSON: (text) => {
    const json = JSON.parse(text.replace(/^\uFEFF/, ''));
    return Array.isArray(json.features) && json.type === 'FeatureCollection' ? json.features.length : null;
  },
  GPX: (text) => elements(text, /<(?:wpt|rte|trk)[\s>/]/g),
  KML: (text) => elements(text, /<Placemark[\s>/]/g),
  CSV: (text) => Math.max(0, recordsIn(text.replace(/^\uFEFF/, '')) - 1),
};

const elements = (text: string, tag: RegExp): number | null =>
  /<!--|<!\[CDATA|<\?(?!xml)/.test(text) ? null : (text.match(tag)?.length ?? 0);

/** Non-empty records of a comma-separated text, by a state machine. Null where another delimiter may have been taken. */
function recordsIn(text: string): number {
  let quoted = false;
  let filled = false;
  let records = 0;
  let start = true;
  for (let i = 0; i < text.length; i++) {
    const c = text[i]!;
    if (quoted) {
      if (c === '"' && text[i + 1] === '"') i++;
      else if (c === '"') quoted = false;
      else if (c.trim() !== '') filled = true;
      continue;
    }
    if (c === '"' && start) {
      quoted = true;
      start = false;
      continue;
    }
    start = c === ',' || c === '\n' || c === '\r';
    if (c === '\n' || c === '\r') {
      if (filled) records++;
      filled = false;
    } else if (c !== ',' && c.trim() !== '') filled = true;
  }
  return filled ? records + 1 : records;
}

describe(`${RUNS} mutated files of a format`, () => {
  it.each(Object.entries({ GeoJSON: writeGeoJson, GPX: writeGpx, KML: writeKml, CSV: writeCsv }))(
    '%s: refused with a sentence, or every place is shown or named as left out',
    (format, write) => {
      const good = new TextEncoder().encode(write(book, whole));
      const before = JSON.stringify(book);
      const random = seededRandom(4711);
      const tally = { refused: 0, read: 0, compared: 0, skipped: 0 };
      let slowest = 0;
      for (let n = 0; n < RUNS; n++) {
        const bytes = mutated(good, random);
        const start = performance.now();
        try {
          let id = 0;
          const preview = readPlaces(bytes, 'mutated', { book, newId: () => `n-${++id}` });
          tally.read++;
          tally.skipped += preview.skipped.length;
          const text = new TextDecoder().decode(bytes);
          const expected = preview.format === format ? counts[format]!(text) : null;
          if (expected !== null && !text.includes('\uFFFD')) {
            tally.compared++;
            const told = preview.items.length + preview.skipped.length;
            if (told < expected) throw new Error(`${expected} places, ${told} told of`);
          }
          for (const { ready, wants, geometry } of preview.items) {
            if ((ready === null) !== (wants !== null)) throw new Error('neither ready nor wanting');
            if (!/^(Point|LineString|Polygon|MultiPolygon)$/.test(geometry.type)) throw new Error(geometry.type);
          }
        } catch (error) {
          if (!(error instanceof UserError)) throw new Error(`mutation ${n}`, { cause: error });
          if (!/^[^\n]{10,500}\.$/.test(error.message)) throw new Error(`no sentence: ${error.message}`);
          tally.refused++;
        }
        slowest = Math.max(slowest, performance.now() - start);
      }
      console.log(`${format}: ${JSON.stringify(tally)}, slowest ${slowest.toFixed(0)} ms`);
      expect(tally.read + tally.refused).toBe(RUNS);
      expect(Math.min(tally.refused, tally.compared)).toBeGreaterThan(RUNS / 20);
      expect(JSON.stringify(book)).toBe(before);
      expect(Object.keys(Object.prototype)).toEqual([]);
      expect(({} as Record<string, unknown>).polluted).toBeUndefined();
    },
    60_000,
  );

  it('crash records: refused with a sentence, or every row is shown or named as left out', () => {
    const good = new TextEncoder().encode(
      'id,date,time,lat,lon,severity,plate\n1,2020-02-03,21:49,44.001,-128.01,injury,ABC\n2,3/14/2021,,44.002,-128.02,"fatal, K",X\n3,2022-01-01,,44.003,-128.03,O,\n',
    );
    const random = seededRandom(815);
    let read = 0;
    for (let n = 0; n < RUNS / 2; n++) {
      const bytes = mutated(good, random);
      try {
        const found = readCrashes(bytes, 'mutated', { bounds: null, sourceId: null });
        read++;
        const text = new TextDecoder().decode(bytes);
        const told = found.crashes.length + found.outside.length + found.skipped.length;
        if (!/[;\t|\uFFFD]/.test(text) && told < recordsIn(text.replace(/^\uFEFF/, '')) - 1)
          throw new Error(`lost a row: ${text}`);
        for (const crash of found.crashes)
          expect(Object.keys(crash).sort()).toEqual(['at', 'deleted', 'id', 'on', 'severity', 'sourceId']);
      } catch (error) {
        if (!(error instanceof UserError)) throw new Error(`mutation ${n}`, { cause: error });
      }
    }
    expect(read).toBeGreaterThan(RUNS / 20);
  });
});
