import { expect, it } from 'vitest';
import {
  angleRuleOf,
  arrivalsOf,
  type Book,
  defaultArrivals,
  defaultFleet,
  defaultKits,
  defaultRates,
  defaultResponse,
  emptyBook,
  fleetOf,
  kitsOf,
  marksOf,
  ratesOf,
  responseOf,
  settingsOf,
  stationsOf,
} from '../../../src/book/index.ts';
import { fullBook } from '../../helpers/full-book.ts';

const changed = (change: (tables: Book['tables']) => void): Book => {
  const book = structuredClone(fullBook());
  change(book.tables);
  return book;
};

it('a book without records has the shipped ones, and says so', () => {
  const book = emptyBook();
  expect(fleetOf(book)).toEqual({ value: defaultFleet, shipped: true });
  expect(kitsOf(book)).toEqual({ value: defaultKits, shipped: true });
  expect(arrivalsOf(book, 'R')).toEqual({ value: defaultArrivals, shipped: true });
  expect(responseOf(book)).toEqual({ value: defaultResponse, shipped: true });
  expect([ratesOf(book), angleRuleOf(book).name, settingsOf(book), stationsOf(book)]).toEqual([
    defaultRates,
    '30/45',
    null,
    [],
  ]);
});

it('a book’s own records come in the shape of the computation', () => {
  const book = fullBook();
  expect(fleetOf(book)).toMatchObject({ shipped: false, value: [{ id: 'e1', grossMassKg: 18_600 }] });
  expect(fleetOf(book).value[0]).not.toHaveProperty('deleted');
  expect(kitsOf(book).value[0]).toEqual({
    id: 'kit',
    name: 'Engine rope kit',
    ropes: [{ lengthM: 60, diameterMm: 12.5, ratedKn: 40, count: 2 }],
    items: [{ kind: 'pulley', ratedKn: 36, lengthM: null, count: 4 }],
  });
  expect(stationsOf(book)[0]).toMatchObject({ lon: -128.01, lat: 43.995, apparatusIds: ['e1'] });
  expect(responseOf(book).value[0]!.when).toEqual({ planAs: ['high'] });
  expect(angleRuleOf(book)).toMatchObject({ name: 'our own', lowMaxDeg: 30, highMinDeg: 40 });
  expect(ratesOf(book).patientKg).toBe(100);
  expect(marksOf(book, 'site').map(({ id, kind }) => [id, kind])).toEqual([
    ['mark', 'tree'],
    ['site.patient', 'patient point'],
  ]);
});

it('deleted records and rates out of bounds do not count', () => {
  const book = changed((tables) => {
    tables.ropes[0]!.deleted = true;
    tables.rates[0]!.value = 1;
    tables.angleRules[0]!.deleted = true;
    tables.sites[0]!.deleted = true;
  });
  expect(kitsOf(book).value[0]!.ropes).toEqual([]);
  expect([ratesOf(book).patientKg, angleRuleOf(book).name, marksOf(book, 'site')]).toEqual([90, '30/45', []]);
});

it('a road is served by the area that names it, else by those without roads, else by nobody', () => {
  const book = changed((tables) => {
    tables.responseAreas.push({ id: 'rest', name: 'Rest', roads: [], deleted: false });
    tables.arrivals.push({ ...tables.arrivals[0]!, id: 'x', areaId: 'rest', unit: 'Engine 9' });
  });
  const units = (road: string | null, of = book) => arrivalsOf(of, road).value.map(({ unit }) => unit);
  expect([units('Lantern Creek Road'), units('Other Road'), units(null)]).toEqual([
    ['Engine 1'],
    ['Engine 9'],
    ['Engine 9'],
  ]);
  expect(units('Other Road', fullBook())).toEqual([]);
});
