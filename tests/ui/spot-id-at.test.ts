import { expect, test } from 'vitest';
import type { Study } from '../../src/study/index.ts';
import { spotIdAt } from '../../src/ui/study/spot-id-at.ts';
import { studyFixture } from '../helpers/study-fixture.ts';

const LAT = 44;
const METRES = 111_320;
/** A road that runs due east from -128 along 44° north, stations 400 to 440. */
const stations = Array.from({ length: 41 }, (_, i) => ({
  stationM: 400 + i,
  azimuthDeg: 90,
  lon: -128 + i / (METRES * Math.cos((LAT * Math.PI) / 180)),
  lat: LAT,
}));
const study = studyFixture({ bench: { stations } as unknown as Study['bench'] });
const at = (eastM: number, northM: number) => ({
  lon: -128 + eastM / (METRES * Math.cos((LAT * Math.PI) / 180)),
  lat: LAT + northM / METRES,
});

test('a place south of a road drawn eastward lies to its right', () => {
  expect(spotIdAt(study, 'E1', at(12.3, -2.5), 100)).toBe('S:E1:4123:25:100');
  expect(spotIdAt(study, 'E1', at(12.3, 2.5), 459)).toBe('S:E1:4123:-25:99');
});

test('without a heading it stands along the road; on the line the offset is plain zero', () => {
  expect(spotIdAt(study, 'T1', at(5, 0), null)).toBe('S:T1:4050:0:90');
});

test('beyond the stations there is no bench to stand on', () => {
  expect(spotIdAt(study, 'E1', at(-30, 0), null)).toBeNull();
  expect(spotIdAt(studyFixture(), 'E1', at(0, 0), null)).toBeNull();
});
