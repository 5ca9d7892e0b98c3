import { expect, test } from 'vitest';
import { type Place, readAddress, writeAddress } from '../../src/ui/address.ts';

test('every place comes back from its address', () => {
  const places: Place[] = [
    { screen: 'start' },
    { screen: 'open' },
    { screen: 'study', at: { lon: -128.0157212, lat: 43.9998178 }, side: 'right' },
    { screen: 'study', at: { lon: 7.5, lat: -46.25 }, side: 'left' },
    { screen: 'study', at: { lon: 0, lat: 0 }, side: null },
  ];
  for (const place of places) expect(readAddress(writeAddress(place))).toEqual(place);
});

test('an address by hand may have fewer digits and no side', () => {
  expect(readAddress('#/study/-128,44')).toEqual({ screen: 'study', at: { lon: -128, lat: 44 }, side: null });
});

test.each(['', '#', '#/study/', '#/study/44', '#/study/-128,144,right', '#/study/200,44', '#/study/1,2,up', '#/else'])(
  'anything else is the start: %s',
  (hash) => expect(readAddress(hash)).toEqual({ screen: 'start' }),
);
