import { expect, test } from 'vitest';
import { type Place, readAddress, sameSubject, startPlace, writeAddress } from '../../src/ui/address.ts';

const point = (lon: number, lat: number, side: 'left' | 'right' | null) =>
  ({ kind: 'point', at: { lon, lat }, side }) as const;

test('every place comes back from its address', () => {
  const view = { at: { lon: -128.01234, lat: 44.1 }, zoom: 16.4 };
  const places: Place[] = [
    startPlace,
    { screen: 'open', subject: null, view: null },
    { screen: 'survey', subject: null, view },
    { screen: 'survey', subject: { kind: 'site', id: 'kettle-bend' }, view: null },
    { screen: 'study', subject: { kind: 'site', id: 'site-0a1b.2_c' }, view },
    { screen: 'study', subject: point(-128.0157212, 43.9998178, 'right'), view },
    { screen: 'survey', subject: point(7.5, -46.25, 'left'), view: null },
    { screen: 'study', subject: point(0, 0, null), view: null },
  ];
  for (const place of places) expect(readAddress(writeAddress(place))).toEqual(place);
});

test('an address by hand may have fewer digits and no side', () => {
  expect(readAddress('#/study/-128,44')).toEqual({ screen: 'study', subject: point(-128, 44, null), view: null });
});

test.each([
  '',
  '#',
  '#/',
  '#/study',
  '#/study/',
  '#/study/-128,144,right',
  '#/study/200,44',
  '#/study/1,2,up',
  '#/else',
  '#/survey/<b>',
])('anything else is the start: %s', (hash) => expect(readAddress(hash)).toEqual(startPlace));

test('a bad map view is left out', () => {
  expect(readAddress('#/survey/kettle-bend@1,2,99').view).toBeNull();
  expect(readAddress('#/survey@200,2,9').view).toBeNull();
});

test('a site and a point are not the same subject', () => {
  const site = { kind: 'site', id: 'a' } as const;
  expect(sameSubject(site, { kind: 'site', id: 'a' })).toBe(true);
  expect(sameSubject(site, { kind: 'site', id: 'b' })).toBe(false);
  expect(sameSubject(site, point(1, 2, null))).toBe(false);
  expect(sameSubject(point(1, 2, 'left'), point(1, 2, 'right'))).toBe(false);
  expect(sameSubject(null, null)).toBe(true);
});
