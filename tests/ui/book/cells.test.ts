import { describe, expect, test } from 'vitest';
import {
  arrivalsOf,
  defaultArrivals,
  defaultFleet,
  defaultKits,
  defaultResponse,
  emptyBook,
  fleetOf,
  kitsOf,
  readRecord,
  responseOf,
  touchesArea,
} from '../../../src/book/index.ts';
import { applyUpdate, composeDraft, emptyState, finish, snapshotOf } from '../../../src/book/merge/index.ts';
import { geodesicM } from '../../../src/geo/index.ts';
import { areaOfText, textOfArea } from '../../../src/ui/book/cells/area-text.ts';
import { cellText, cellValue, checkCell, columns, ringAround } from '../../../src/ui/book/cells/index.ts';
import { isShipped, shippedAsOwn } from '../../../src/ui/book/make-own.ts';

const length = { field: 'lengthM', label: 'Length', kind: 'length' } as const;

describe('what is typed', () => {
  test.each([
    ['length', '200', 'us', 60.96],
    ['length', '200', 'metric', 200],
    ['mass', '1000', 'us', 453.592],
    ['force', '9000', 'us', 40.034],
    ['force', '40', 'metric', 40],
    ['number', '12,5', 'us', 12.5],
  ] as const)('%s %s in %s is kept as %d and comes back as typed', (kind, typed, units, kept) => {
    const column = { field: 'x', label: 'X', kind };
    expect(cellValue(column, typed, units)).toBe(kept);
    expect(cellText(column, kept, units)).toBe(typed.replace(',', '.'));
  });

  test('nothing typed is "not told" where the field may be empty, and a refusal where it may not', () => {
    expect(cellValue({ ...length, empty: true }, ' ', 'us')).toBeNull();
    expect(() => cellValue(length, ' ', 'us')).toThrow('Length is empty; give a number of ft.');
    expect(() => cellValue(length, '12 ft', 'us')).toThrow(
      'Length cannot be "12 ft": expected a number of ft; correct it.',
    );
  });

  test('attachment points: a strength that nobody told stays untold', () => {
    const ties = { field: 'attachments', label: 'Attachment points', kind: 'ties' } as const;
    const value = cellValue(ties, 'front 40, Rear', 'metric');
    expect(value).toEqual([
      { end: 'front', ratedKn: 40 },
      { end: 'rear', ratedKn: null },
    ]);
    expect(cellText(ties, value, 'metric')).toBe('front 40, rear');
    expect(() => cellValue(ties, 'bumper 40', 'metric')).toThrow('cannot be "bumper 40"');
  });

  test('the door of the schema answers with its sentence, and says in what the book counts', () => {
    const rope = readRecord('ropes', { id: 'r', kitId: 'k', lengthM: 60, count: 2 }, 'test') as never;
    expect(checkCell('ropes', rope, length, '150', 'us')).toEqual({ value: 45.72 });
    const refused = checkCell('ropes', rope, length, '9000', 'us');
    expect('why' in refused && refused.why).toMatch(/lengthM: expected 1 to 500.*The book counts in metres\.$/);
  });

  test('two limits that are one value are checked together', () => {
    const rule = readRecord(
      'angleRules',
      { id: 'r', name: 'Ours', limits: { lowMaxDeg: 30, highMinDeg: 45 }, source: 'us' },
      'test',
    );
    const [, low] = columns.angleRules;
    expect(checkCell('angleRules', rule as never, low, '35', 'us')).toEqual({
      value: { lowMaxDeg: 35, highMinDeg: 45 },
    });
    expect(checkCell('angleRules', rule as never, low, '50', 'us')).toHaveProperty('why');
  });
});

describe('areas', () => {
  test('"within" is a ring that leaves nothing of the circle out', () => {
    const area = areaOfText('44.0, -128.0 within 100 m', 'us');
    const ring = (area.coordinates as [number, number][][])[0]!;
    for (const [lon, lat] of ring) {
      const far = geodesicM({ lon: -128, lat: 44 }, { lon, lat });
      expect(far).toBeGreaterThanOrEqual(100);
      expect(far).toBeLessThan(101);
    }
    const degree = 111_111;
    expect(touchesArea([{ lon: -128, lat: 44 + 99 / degree }], area)).toBe(true);
    expect(touchesArea([{ lon: -128, lat: 44 + 103 / degree }], area)).toBe(false);
  });

  test('corners come back, and two are no area', () => {
    const text = '44.000000, -128.000000\n44.001000, -128.000000\n44.001000, -127.999000';
    expect(textOfArea(areaOfText(text, 'us'))).toBe(text);
    expect(() => areaOfText('44, -128\n44.1, -128', 'us')).toThrow('This area has 2 corners');
    expect(() => ringAround({ lon: 0, lat: 0 }, 0)).toThrow('A radius of 0 m came');
  });
});

test('the shipped parts, written in as our own, are read back as they were', () => {
  const state = emptyState();
  const parts = ['kit', 'fleet', 'arrivals', 'response'] as const;
  parts.forEach((part, i) => {
    expect(isShipped(emptyBook(), part)).toBe(true);
    const draft = composeDraft(state, shippedAsOwn(part), { who: 'a', device: 'b', label: 'c' })!;
    applyUpdate(state, finish(draft, 'a', i + 1, [i, 0]), 'test');
  });
  const book = snapshotOf(state);
  for (const part of parts) expect(isShipped(book, part)).toBe(false);
  const byId = <T extends { id: string }>(list: readonly T[]) => [...list].sort((a, b) => (a.id < b.id ? -1 : 1));
  expect(byId(fleetOf(book).value)).toEqual(byId(defaultFleet));
  expect(arrivalsOf(book, 'Any road').value).toEqual(defaultArrivals);
  expect(responseOf(book).value).toEqual(defaultResponse);
  expect(byId(kitsOf(book).value).map(({ ropes }) => ropes)).toEqual(byId(defaultKits).map(({ ropes }) => ropes));
  expect(byId(kitsOf(book).value).map(({ items }) => items.length)).toEqual(
    byId(defaultKits).map(({ items }) => items.length),
  );
});
