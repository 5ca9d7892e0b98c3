import type { Study, StudyBenchStation, StudyLayout, StudySpot, StudyWay } from '../../src/study/index.ts';
import { studyFixture } from './study-fixture.ts';

/** Metres to degrees at 44° N, near enough for a hand-made study. */
const DEGREE_LAT_M = 111_120;
const at = (east: number, north: number) => ({
  lon: -128 + east / (DEGREE_LAT_M * Math.cos((44 * Math.PI) / 180)),
  lat: 44 + north / DEGREE_LAT_M,
});

/** An east–west road drawn to the east, 6 m of carriageway in two lanes, edges at 4.9 m, climbing to the east at 2°. */
function stations(): StudyBenchStation[] {
  return Array.from({ length: 101 }, (_, i) => ({
    stationM: 370 + i,
    ...at(i - 50, 0),
    azimuthDeg: 90,
    leftEdgeKind: 'rise',
    rightEdgeKind: 'drop',
    leftEdgeOffsetM: -4.9,
    rightEdgeOffsetM: 4.9,
    usableLeftOffsetM: -4.4,
    usableRightOffsetM: 3.9,
    lineShiftM: 0,
  }));
}

export const spot = (id: string, apparatus: string, change: Partial<StudySpot> = {}): StudySpot => ({
  id,
  apparatus,
  lengthM: 9.2,
  widthM: 2.5,
  ...at(0, -1.5),
  headingDeg: 90,
  stationM: 420,
  offsetM: 1.5,
  gradeDeg: 2,
  crossfallDeg: 1,
  edgeClearanceM: 2.1,
  lanesBlocked: 1,
  holdKn: 20,
  use: 'either',
  problems: [],
  workable: true,
  pinned: false,
  ...change,
});

/** A turned haul along the outer lane to the east, in the figures of a 45 m slope at 33°. */
export const turnedLayout = (change: Partial<StudyLayout> = {}): StudyLayout => ({
  id: 'L1',
  kind: 'turned',
  anchor: 'S:E2',
  turn: 'S:E1',
  points: { edge: at(0, -4.9), turn: at(0, -1.6), anchor: at(20.2, -1.6), belayAnchor: at(-3, -1.6), handTurn: null },
  lines: {
    main: { anchor: 'S:E2', deviceAt: 'S:E1', captureAt: 'S:E1', turn: 'S:E1' },
    belay: { anchor: 'S:E1', deviceAt: 'S:E1', runM: 5.75, sharesAnchorWith: 'S:E1' },
    hand: null,
  },
  contacts: [],
  haulFieldM: 20.2,
  throwM: 17.5,
  raiseM: 45.75,
  pulls: 3,
  resets: 2,
  liftedByHandM: 0,
  mechanicalAdvantage: '3:1',
  system: 'separate haul line',
  tensionKn: { walking: 2.555, hanging: 3.557, held: 2.751, belay: 2.751 },
  team: { walking: 5, allHang: 7, sustained: 9, handsAtOnce: 5, checkGrab: false },
  walkM: 52.5,
  regripsPerPull: 1,
  ropeM: { main: 52.25, belay: 56.25, haul: 56.5 },
  fits: {
    firstArriving: 'no',
    firstAlarm: 'yes',
    mutualAid: 'yes',
    short: [{ line: 'haul', byM: 56.5, unit: 'Engine 2', atMin: 8 }],
  },
  stages: null,
  lanesBlocked: 2,
  turnAngleDeg: 90,
  keepOut: { type: 'Polygon', coordinates: [] },
  people: {
    contact: { count: 4, atMin: 0 },
    leastLower: { count: 8, atMin: 8 },
    leastRaise: { count: 13, atMin: 12 },
    full: { count: 19, atMin: 25 },
    roles: [],
  },
  forces: [],
  minutes: { from: 45, to: 70, parts: { closure: 5, rig: 12, lower: 7.5, package: 10, raise: 11.1, wait: 0 } },
  rank: 1,
  why: [],
  reasons: [],
  ...change,
});

export const straightLayout = (change: Partial<StudyLayout> = {}): StudyLayout =>
  turnedLayout({
    id: 'L2',
    kind: 'straight',
    turn: null,
    anchor: 'S:E1',
    haulFieldM: 5,
    resets: 23,
    turnAngleDeg: null,
    rank: 2,
    ...change,
  });

export const way = (change: Partial<StudyWay> = {}): StudyWay => ({
  kind: 'raise',
  ropeM: 56.5,
  people: { count: 13, atMin: 12 },
  minutes: { from: 45, to: 70 },
  meets: 'the ambulance on the road above',
  bearers: null,
  reachedBy: 'vehicle',
  allowed: true,
  rank: 1,
  why: [],
  ...change,
});

/** The hand-made study with a turned and a straight haul, two engines, and the arrivals of a usual first alarm. */
export function haulStudy(change: Partial<Study> = {}): Study {
  const arrival = (unit: string, atMin: number, people: number, ropesM: number[] = []) => ({
    ...{ unit, atMin, people, ropesM, kit: [], apparatus: unit === 'Mutual aid' ? null : unit },
    tier: atMin === 0 ? ('first arriving' as const) : atMin < 20 ? ('first alarm' as const) : ('mutual aid' as const),
  });
  const { stationM: _s, lon: _x, lat: _y, azimuthDeg: _a, ...here } = stations()[50]!;
  return studyFixture({
    bench: {
      widthM: 9.8,
      ...here,
      gradeDeg: 2,
      crossfallDeg: 1,
      carriageway: { widthM: 6, lanes: 2, how: 'typed' },
      stations: stations(),
    },
    spots: [spot('S:E1', 'Engine 1'), spot('S:E2', 'Engine 2')],
    layouts: [turnedLayout(), straightLayout()],
    ways: [way()],
    closure: {
      kind: 'road closed',
      lanesBlocked: 2,
      taperM: null,
      advanceSignsM: [152.4, 152.4, 152.4],
      stoppingSightM: 120,
      sightM: { before: 150, after: 150 },
      short: [],
      speed: { mph: 45, how: 'typed' },
    },
    arriving: [
      arrival('Engine 1', 0, 4, [60, 60]),
      arrival('Engine 2', 8, 4, [60, 60]),
      arrival('Truck 1', 12, 4),
      arrival('Mutual aid', 25, 8, [90, 90]),
    ],
    ...change,
  });
}
