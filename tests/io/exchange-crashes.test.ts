import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readCrashes } from '../../src/io/exchange/index.ts';

const read = (text: string, bounds: Parameters<typeof readCrashes>[2]['bounds'] = null) =>
  readCrashes(new TextEncoder().encode(text), 'crashes.csv', { bounds, sourceId: null });

describe('crash records', () => {
  const table =
    'id,date,time,lat,lon,road,severity,plate,driver\n17,2020-02-03,21:49,44.0012345,-128.02,Old Spur,injury,ABC-123,J. Doe\n18,2020-02-04,06:02,44.002,-128.03,Old Spur,property damage,XYZ-9,R. Roe\n';

  it('keep day, place and severity, and nothing else', () => {
    const found = read(table);
    expect(found.crashes).toEqual([
      {
        id: '2020-02-03-p44001235-m128020000-serious-1',
        on: '2020-02-03',
        at: { lon: -128.02, lat: 44.001235 },
        severity: 'serious',
        sourceId: null,
        deleted: false,
      },
      {
        id: '2020-02-04-p44002000-m128030000-property-damage-1',
        on: '2020-02-04',
        at: { lon: -128.03, lat: 44.002 },
        severity: 'property damage',
        sourceId: null,
        deleted: false,
      },
    ]);
    expect(JSON.stringify(found.crashes)).not.toMatch(/21:49|Old Spur|ABC|Doe|17/);
    expect(found.remarks[0]).toBe('Dropped and not kept: id, time, road, plate, driver.');
  });

  it('are placed by one column of positions in any usual form, too', () => {
    const rows = 'date,usng,severity\n2020-02-03,9T WJ 79371 72460,K\n2020-02-04,"44° 0.060\' N, 128° 0.600\' W",K\n';
    const { crashes, skipped } = read(rows);
    expect(skipped).toEqual([]);
    for (const { at } of crashes) {
      expect(at.lat).toBeCloseTo(44.001, 4);
      expect(at.lon).toBeCloseTo(-128.01, 4);
    }
    expect(crashes).toHaveLength(2);
    expect(() => read('date,severity\n2020-02-03,K\n')).toThrow(/has no column lat \(found: date, severity\)/);
  });

  it('read twice are the same records; two alike on one day are two', () => {
    expect(read(table).crashes.map(({ id }) => id)).toEqual(read(table).crashes.map(({ id }) => id));
    const twice = read(`${table}19,2020-02-04,07:00,44.002,-128.03,,property damage,,\n`).crashes.map(({ id }) => id);
    expect(new Set(twice).size).toBe(3);
  });

  it.each([
    ['K', 'killed'],
    ['Fatal Injury (Killed)', 'killed'],
    ['A', 'serious'],
    ['Suspected Serious Injury', 'serious'],
    ['Incapacitating', 'serious'],
    ['B', 'minor'],
    ['Non-incapacitating injury', 'minor'],
    ['Suspected minor injury', 'minor'],
    ['C', 'possible'],
    ['Possible injury', 'possible'],
    ['Complaint of pain', 'possible'],
    ['O', 'property damage'],
    ['PDO', 'property damage'],
    ['No apparent injury', 'property damage'],
    ['Property Damage Only', 'property damage'],
    ['injury', 'serious'],
    ['Non-fatal injury', 'serious'],
    ['?', 'unknown'],
    ['', 'unknown'],
  ])('take %j for %s [source: kabco]', (word, severity) => {
    expect(read(`date,lat,lon,severity\n2020-01-01,44,-128,${word}\n`).crashes[0]!.severity).toBe(severity);
  });

  it('take a bare injury for minor only where the file names serious ones', () => {
    const found = read('date,lat,lon,severity\n2020-01-01,44,-128,injury\n2020-01-02,44,-128,serious injury\n');
    expect(found.crashes.map(({ severity }) => severity)).toEqual(['minor', 'serious']);
    expect(found.remarks).toEqual(['1 rows say only that somebody was injured; taken as minor.']);
  });

  it.each([
    [['2020-02-03'], ['2020-02-03']],
    [['20200203'], ['2020-02-03']],
    [['2020-02-03T21:49:00Z'], ['2020-02-03']],
    [['3/4/2020'], ['2020-03-04']],
    [['3/4/2020 11:30 PM'], ['2020-03-04']],
    [
      ['3/4/2020', '25/4/2020'],
      ['2020-04-03', '2020-04-25'],
    ],
    [
      ['3/4/2020', '4/25/2020'],
      ['2020-03-04', '2020-04-25'],
    ],
    [['4 Mar 2020'], ['2020-03-04']],
    [['March 4, 2020'], ['2020-03-04']],
    [['2020-02-30'], []],
    [['13/13/2020'], []],
    [['yesterday'], []],
  ])('read the days %j', (texts, days) => {
    const rows = texts.map((text) => `"${text}",44,-128,K`).join('\n');
    const { crashes, skipped } = read(`date,lat,lon,severity\n${rows}\n`);
    expect(crashes.map(({ on }) => on)).toEqual(days);
    expect(crashes.length + skipped.length).toBe(texts.length);
  });

  it('outside the district are left aside and counted', () => {
    const found = read(
      'date,lat,lon,severity\n2020-01-01,44,-128,K\n2020-01-01,77.7777,-77.7777,K\n2020-01-01,-128,44,K\n',
      { west: -129, south: 43, east: -127, north: 45 },
    );
    expect([found.crashes.length, found.outside.length, found.skipped.length]).toEqual([1, 1, 1]);
    expect(found.remarks.at(-1)).toMatch(/1 rows lie outside the district/);
  });

  it('without a needed column are refused by its name', () => {
    expect(() => read('date,lat,lon\n2020-01-01,44,-128\n')).toThrow(/no column severity \(found: date, lat, lon\)/);
  });

  it.skipIf(!existsSync('data/demo/crashes.csv'))(
    'of the demo district: three places that a clerk made up are left aside',
    () => {
      const text = readFileSync('data/demo/crashes.csv', 'utf8');
      const found = read(text, { west: -128.1, south: 43.9, east: -127.9, north: 44.1 });
      expect([found.outside.length, found.skipped.length]).toEqual([2, 1]);
      expect(found.crashes.length + 3).toBe(text.trim().split('\n').length - 1);
    },
  );
});
