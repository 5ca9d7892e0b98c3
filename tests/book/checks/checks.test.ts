import { describe, expect, it } from 'vitest';
import {
  changedSince,
  contestedForSite,
  type EventRecord,
  emptyBook,
  fieldCheck,
  looseEnds,
  monthsLater,
  restoreBook,
  type SignOffRecord,
  touchesArea,
} from '../../../src/book/index.ts';
import { fullBook, oneOfEach } from '../../helpers/full-book.ts';

const signed = (id: string, on: string, method: SignOffRecord['method'] = 'walked'): SignOffRecord => ({
  ...oneOfEach.signOffs,
  id,
  on,
  method,
});

describe('review', () => {
  it('is due twelve months after somebody was there', () => {
    const check = (today: string) => fieldCheck([signed('a', '2024-02-29')], 'site', 12, today);
    expect([check('2025-02-27').due, check('2025-02-28').due]).toEqual([false, true]);
    expect(check('2025-02-27').dueOn).toBe('2025-02-28');
  });
  it('is not put off by a desk check, a deleted one, another site’s or one dated ahead', () => {
    const signOffs = [
      signed('a', '2024-01-01', 'drove'),
      signed('b', '2025-01-01', 'desk'),
      { ...signed('c', '2025-02-01'), deleted: true },
      { ...signed('d', '2025-02-01'), siteId: 'other' },
    ];
    const found = fieldCheck(signOffs, 'site', 12, '2025-03-01');
    expect([found.latest?.id, found.inField?.id, found.due]).toEqual(['b', 'a', true]);
    expect(fieldCheck([signed('a', '2099-01-01')], 'site', 12, '2025-03-01').dueOn).toBe('2026-03-01');
    expect(fieldCheck([], 'site', 12, '2025-03-01')).toEqual({ latest: null, inField: null, dueOn: null, due: true });
  });
  it('months end where they end', () => {
    expect([monthsLater('2024-01-31', 1), monthsLater('2024-12-31', 2), monthsLater('2024-08-31', 18)]).toEqual([
      '2024-02-29',
      '2025-02-28',
      '2026-02-28',
    ]);
  });
});

describe('events', () => {
  const square = (w: number, s: number, e: number, n: number): [number, number][] => [
    [w, s],
    [e, s],
    [e, n],
    [w, n],
    [w, s],
  ];
  const event = (id: string, on: string, more: Partial<EventRecord> = {}): EventRecord => ({
    ...oneOfEach.events,
    id,
    on,
    area: { type: 'Polygon', coordinates: [square(0, 0, 10, 10)] },
    ...more,
  });
  const site = [{ lon: 5, lat: 5 }];

  it('mark every site in their area as changed, until somebody was there on a later day', () => {
    const ids = (inField: string | null) =>
      changedSince(site, [event('b', '2024-06-01'), event('a', '2024-03-01')], inField, '2030-01-01').sinceSurvey.map(
        ({ id }) => id,
      );
    expect([ids(null), ids('2024-03-01'), ids('2024-05-01'), ids('2024-06-01'), ids('2024-06-02')]).toEqual([
      ['a', 'b'],
      ['a', 'b'],
      ['b'],
      ['b'],
      [],
    ]);
  });
  it('make elevation that is older, or of no known day, screening only', () => {
    const older = (day: string | null) =>
      changedSince(site, [event('a', '2024-03-01')], null, day).sinceElevation.length;
    expect([older('2024-02-29'), older('2024-03-01'), older('2024-03-02'), older(null)]).toEqual([1, 1, 0, 1]);
    expect(changedSince(site, [event('a', '2024-03-01', { deleted: true })], null, null).sinceSurvey).toEqual([]);
  });
  it('touch what lies inside, on the border or is crossed; a hole is outside', () => {
    const ring: EventRecord['area'] = { type: 'Polygon', coordinates: [square(0, 0, 10, 10), square(4, 4, 6, 6)] };
    const at = (...path: [number, number][]) =>
      touchesArea(
        path.map(([lon, lat]) => ({ lon, lat })),
        ring,
      );
    expect([at([5, 5]), at([2, 2]), at([10, 5]), at([0, 0]), at([4, 5]), at([11, 5])]).toEqual([
      false,
      true,
      true,
      true,
      true,
      false,
    ]);
    expect([at([-1, 5], [11, 5]), at([-1, -1], [11, -1]), at([4.5, 5], [5.5, 5])]).toEqual([true, false, false]);
    const two: EventRecord['area'] = {
      type: 'MultiPolygon',
      coordinates: [[square(0, 0, 1, 1)], [square(8, 8, 9, 9)]],
    };
    expect([touchesArea([{ lon: 8.5, lat: 8.5 }], two), touchesArea([{ lon: 5, lat: 5 }], two)]).toEqual([true, false]);
  });
});

describe('loose ends', () => {
  it('are none in an empty book, and each is told with its record', () => {
    expect(looseEnds(emptyBook())).toEqual([]);
    expect(looseEnds(fullBook())).toEqual([
      'corrections "correction" names "reading-2" of measurements, which is not in the book; choose another or clear it.',
    ]);
    const book = structuredClone(fullBook());
    book.tables.kits[0]!.deleted = true;
    book.tables.rates[0]!.value = 5;
    expect(looseEnds(restoreBook(book, 'A'))).toEqual([
      expect.stringMatching(/^corrections/),
      'fleet "e1" names "kit" of kits, which is not in the book; choose another or clear it.',
      'ropes "rope" names "kit" of kits, which is not in the book; choose another or clear it.',
      'kitItems "item" names "kit" of kits, which is not in the book; choose another or clear it.',
      'arrivals "arrival" names "kit" of kits, which is not in the book; choose another or clear it.',
      'rates "patientKg" is set to 5, out of its bounds; the shipped value counts.',
    ]);
  });
});

it('contested fields of a site are its own, its records’ and the district’s', () => {
  const one = (table: 'sites' | 'marks' | 'rates' | 'drills', id: string) => ({
    table,
    id,
    field: 'deleted',
    values: [],
  });
  const book = {
    ...fullBook(),
    contested: [
      one('sites', 'site'),
      one('sites', 'x'),
      one('marks', 'mark'),
      one('marks', 'y'),
      one('rates', 'patientKg'),
      one('drills', 'drill'),
    ],
  };
  expect(contestedForSite(book, 'site').map(({ id }) => id)).toEqual(['site', 'mark', 'patientKg']);
});
