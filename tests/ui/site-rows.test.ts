import { expect, test } from 'vitest';
import type { SiteRecord } from '../../src/book/index.ts';
import type { SiteRead } from '../../src/ui/state/index.ts';
import { pickRows, siteOrder, siteRows, sitesByName } from '../../src/ui/survey/site-rows.ts';

const site = (id: string, name: string, roadName: string | null, notes = ''): SiteRecord => ({
  id,
  name,
  place: { lon: -128, lat: 44, sideAzimuthDeg: 90 },
  roadName,
  roadId: null,
  type: 'bend',
  notes,
  patientPoint: null,
  patients: 1,
  radio: null,
  pinnedAnchor: null,
  pinnedTurn: null,
  pinnedBelay: null,
  routeId: null,
  deleted: false,
});
const read = (className: SiteRead['className'], governingDeg: number, ropeLineM: number): SiteRead => ({
  className,
  planAs: className === 'undecided' ? 'steep' : className,
  governingDeg,
  rangeDeg: [governingDeg - 1, governingDeg + 1],
  ropeLineM,
  resets: { turned: 2, straight: null },
  water: false,
  screeningOnly: false,
});
const sites = new Map(
  [
    site('a', 'Kettle Bend', 'Lantern Creek Road'),
    site('b', 'Long Ladle', 'Cinder Grade Road', 'gate locked'),
    site('c', 'Level Acre', 'Lantern Creek Road'),
    site('d', 'Coin Toss', null),
  ].map((one) => [one.id, one]),
);
const reads = new Map<string, SiteRead | { none: string }>([
  ['a', read('high', 50, 40)],
  ['b', read('steep', 39, 120)],
  ['c', { none: 'No drop edge.' }],
  ['d', read('undecided', 30, 50)],
]);
const signOff = (siteId: string, on: string, method: 'walked' | 'desk') =>
  [
    `${siteId} ${on}`,
    { id: 's', siteId, by: 'A', role: null, on, method, conditions: null, notes: '', deleted: false },
  ] as const;
const rows = siteRows(
  sites,
  reads,
  new Map([
    signOff('a', '2023-05-01', 'walked'),
    signOff('a', '2021-05-01', 'walked'),
    signOff('b', '2024-01-01', 'desk'),
  ]),
);
const ids = (...asked: [string, Parameters<typeof pickRows>[2], Parameters<typeof pickRows>[3]]): string =>
  pickRows(rows, ...asked)
    .map((row) => row.site.id)
    .join('');

test('the search finds every word, in name, road and notes, whatever their case and order', () => {
  expect(ids('lantern', 'all', 'name')).toBe('ac');
  expect(ids('ROAD level', 'all', 'name')).toBe('c');
  expect(ids('locked', 'all', 'name')).toBe('b');
  expect(ids('nowhere', 'all', 'name')).toBe('');
});

test('filters: a desk check is no check on the ground, an unread site is never told undecided or high', () => {
  expect(ids('', 'not checked', 'name')).toBe('dcb');
  expect(ids('', 'undecided', 'name')).toBe('d');
  expect(ids('', 'high', 'name')).toBe('a');
  expect(rows.find((row) => row.site.id === 'a')?.checkedOn).toBe('2023-05-01');
  expect(pickRows(siteRows(sites, new Map(), new Map()), '', 'high', 'name')).toEqual([]);
});

test('orders: by road, sites without a road last; steepest and longest first, what has no number last', () => {
  expect(ids('', 'all', 'road')).toBe('bacd');
  expect(ids('', 'all', 'steepest')).toBe('abdc');
  expect(ids('', 'all', 'longest rope')).toBe('bdac');
});

test('one site is found among 5,000', () => {
  const many = new Map(
    Array.from({ length: 5000 }, (_, i) => [`s${i}`, site(`s${i}`, `Place ${i}`, `Road ${i % 40}`)] as const),
  );
  expect(pickRows(siteRows(many, new Map(), new Map()), 'place 4999', 'all', 'road').map((row) => row.site.id)).toEqual(
    ['s4999'],
  );
});

test('a site in the area of an event counts as not checked until somebody was there after it', () => {
  const ring: [number, number][] = [
    [-128.1, 43.9],
    [-127.9, 43.9],
    [-127.9, 44.1],
    [-128.1, 44.1],
    [-128.1, 43.9],
  ];
  const area = { type: 'Polygon' as const, coordinates: [ring] };
  const slide = {
    id: 'e',
    name: 'Slide',
    kind: 'slide' as const,
    area,
    on: '2026-05-01',
    by: null,
    notes: '',
    deleted: false,
  };
  const events = new Map([['e', slide]]);
  const signed = new Map([
    signOff('a', '2026-04-30', 'walked'),
    signOff('b', '2026-05-02', 'walked'),
    signOff('c', '2026-06-01', 'desk'),
  ]);
  const rows = siteRows(sites, reads, signed, undefined, events);
  expect(rows.map(({ site: { id }, changedOn }) => [id, changedOn])).toEqual([
    ['a', '2026-05-01'],
    ['b', null],
    ['c', '2026-05-01'],
    ['d', '2026-05-01'],
  ]);
  expect(pickRows(rows, '', 'not checked', 'name').map(({ site: { id } }) => id)).not.toContain('b');
});

test('by road: along each road as far as that is known, what lies off every road last in its own', () => {
  const order = (along: [string, number | null][]): string => {
    const places = new Map(along.map(([id, m]) => [id, m === null ? null : { road: 0, m, mile: null }]));
    return pickRows(siteRows(sites, reads, new Map(), siteOrder(sitesByName(sites), places)), '', 'all', 'road')
      .map((row) => row.site.id)
      .join('');
  };
  expect(order([])).toBe('bacd');
  expect(
    order([
      ['a', 900],
      ['c', 100],
    ]),
  ).toBe('bcad');
  expect(
    order([
      ['a', 900],
      ['c', null],
    ]),
  ).toBe('bacd');
  expect(order([['c', 5]])).toBe('bcad');
});
