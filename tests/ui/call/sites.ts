import { localPlane } from '../../../src/geo/index.ts';
import type { CallPack, CallRoad, CallSite } from '../../../src/io/offline/index.ts';
import { calibrate, MILE_M, type Route } from '../../../src/road/index.ts';
import { seededRandom } from '../../../src/units/index.ts';

const plane = localPlane({ lon: -128, lat: 44 });

/** A straight road eastward with a post each mile from `firstMile`, none left out. */
export function madeRoad(name: string, ref: string | null, firstMile: number, miles: number, northM = 0): CallRoad {
  const stationM = Array.from({ length: miles * 20 + 1 }, (_, i) => (i * MILE_M) / 20);
  const line = stationM.flatMap((x) => {
    const { lon, lat } = plane.toLonLat({ x, y: northM });
    return [lon, lat];
  });
  const lengthM = stationM.at(-1)!;
  const route: Route = {
    name,
    line: Float64Array.from(line),
    stationM: Float64Array.from(stationM),
    lengthM,
    legs: [],
  };
  const posts = Array.from({ length: miles + 1 }, (_, i) => ({
    mile: firstMile + i,
    at: plane.toLonLat({ x: i * MILE_M, y: northM }),
  }));
  return { name, ref, lengthM, line, stationM, calibration: calibrate(route, posts) };
}

export const madeSite = (change: Partial<CallSite>): CallSite => ({
  id: 'a',
  name: 'A',
  lon: -128,
  lat: 44,
  road: null,
  stationM: null,
  mile: null,
  mileNote: null,
  sideAzimuthDeg: 180,
  elevationM: 900,
  planAs: 'steep',
  undecided: false,
  checkedOn: null,
  stops: [],
  ...change,
});

const first = [
  'Split',
  'Long',
  'Kettle',
  'Broken',
  'Tender',
  'Wet',
  'Slate',
  'Cold',
  'Copper',
  'Hollow',
  'Bitter',
  'Quiet',
];
const second = [
  'Oak',
  'Ladle',
  'Shelf',
  'Foot',
  'Verge',
  'Anvil',
  'Barrel',
  'Lantern',
  'Quarry',
  'Thimble',
  'Saddle',
  'Gate',
];
const third = ['Bend', 'Turnout', 'Culvert', 'Corner', 'Grade', 'Ridge', 'Cut', 'Switchback'];

/** Sites with names of three words and a number, the same each time. */
export function manySites(count: number): CallSite[] {
  const random = seededRandom(11);
  const pick = (words: readonly string[]): string => words[Math.floor(random.next() * words.length)]!;
  return Array.from({ length: count }, (_, i) =>
    madeSite({
      id: `s${i}`,
      name: `${pick(first)} ${pick(second)} ${pick(third)} ${i}`,
      road: i % 2 ? 'Cinder Grade Road' : 'Lantern Creek Road',
    }),
  );
}

export const madePack: Pick<CallPack, 'sites' | 'roads'> = {
  roads: [
    madeRoad('Lantern Creek Road', null, 4, 3),
    madeRoad('Cinder Grade Road', 'CR 12', 0, 2, 3000),
    { ...madeRoad('Old Quarry Spur', null, 0, 1, 6000), calibration: { stretches: [], off: [], same: [] } },
  ],
  sites: [
    madeSite({ id: 'kettle', name: 'Kettle Bend', road: 'Lantern Creek Road', stationM: 1200, mile: 4.75 }),
    madeSite({ id: 'culvert', name: 'Third Culvert', road: 'Lantern Creek Road', stationM: 1500, mile: 4.93 }),
    madeSite({ id: 'oak', name: 'Split Oak Turnout', road: 'Cinder Grade Road', stationM: 2000, mile: 1.2 }),
    madeSite({ id: 'quarry', name: 'Quarry Gate', road: 'Old Quarry Spur', stationM: 100 }),
  ],
};
