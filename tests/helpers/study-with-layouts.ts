import type { Position, Study, StudyLayout, StudySpot } from '../../src/study/index.ts';
import { studyFixture } from './study-fixture.ts';

const LAT = 44;
const LON = -128;
/** Metres of a degree at 44° north on the WGS 84 ellipsoid (series of its radii of curvature). */
const NORTH_M =
  111132.954 - 559.822 * Math.cos((2 * LAT * Math.PI) / 180) + 1.175 * Math.cos((4 * LAT * Math.PI) / 180);
const EAST_M =
  111412.84 * Math.cos((LAT * Math.PI) / 180) -
  93.5 * Math.cos((3 * LAT * Math.PI) / 180) +
  0.118 * Math.cos((5 * LAT * Math.PI) / 180);

/** A position by metres east and north of the fixture's edge. */
export const positionAt = (eastM: number, northM: number): Position => ({
  lon: LON + eastM / EAST_M,
  lat: LAT + northM / NORTH_M,
});

/** The road runs east along y = 5, its travelled way 6 m wide; the drop edge is 5 m south of it, the cut 4 m north. */
const stations = Array.from({ length: 121 }, (_value, i) => ({
  stationM: 360 + i,
  ...positionAt(i - 60, 5),
  azimuthDeg: 90,
  leftEdgeKind: 'rise' as const,
  rightEdgeKind: 'drop' as const,
  leftEdgeOffsetM: -4,
  rightEdgeOffsetM: 5,
  usableLeftOffsetM: -3.5,
  usableRightOffsetM: 4,
  lineShiftM: 0,
}));

const bench: Study['bench'] = {
  widthM: 9,
  leftEdgeKind: 'rise',
  rightEdgeKind: 'drop',
  leftEdgeOffsetM: -4,
  rightEdgeOffsetM: 5,
  usableLeftOffsetM: -3.5,
  usableRightOffsetM: 4,
  lineShiftM: 0,
  gradeDeg: 1,
  crossfallDeg: 1,
  carriageway: { widthM: 6, lanes: 2, how: 'assumed' },
  stations,
};

const spot = (id: string, apparatus: string, eastM: number, northM: number, headingDeg: number): StudySpot => ({
  id,
  apparatus,
  lengthM: 9.5,
  widthM: 2.6,
  ...positionAt(eastM, northM),
  headingDeg,
  stationM: 420 + eastM,
  offsetM: 5 - northM,
  gradeDeg: 1,
  crossfallDeg: 1,
  edgeClearanceM: northM - 1.3,
  lanesBlocked: 1,
  holdKn: 20,
  use: 'either',
  problems: [],
  workable: true,
  pinned: false,
});

/** Rings of the fixture's keep-out: 3 m to either side of a descent due south, and the inside of the turned rope. */
const keepOut = (inside: [number, number][]): StudyLayout['keepOut'] => ({
  type: 'Polygon',
  coordinates: [
    ([[3, 0], ...inside, [-3, 0], [-3, -45], [3, -45], [3, 0]] as [number, number][]).map(([e, n]) => {
      const { lon, lat } = positionAt(e, n);
      return [lon, lat];
    }),
  ],
});

const common = {
  contacts: [{ distanceM: 0, bendDeg: 15.2 }],
  liftedByHandM: 1,
  system: 'separate haul line' as const,
  tensionKn: { walking: 3.4, hanging: 3.8, held: 2.9, belay: 2.9 },
  team: { walking: 5, allHang: 6, sustained: 8, handsAtOnce: 5, checkGrab: false },
  walkM: 60,
  regripsPerPull: 1,
  ropeM: { main: 60, belay: 62, haul: 58 },
  fits: { firstArriving: 'yes' as const, firstAlarm: 'yes' as const, mutualAid: 'yes' as const, short: [] },
  stages: null,
  lanesBlocked: 1,
  people: {
    contact: { count: 4, atMin: 0 },
    leastLower: { count: 8, atMin: 8 },
    leastRaise: { count: 13, atMin: 12 },
    full: { count: 19, atMin: 25 },
    roles: [{ role: 'haul team' as const, count: 5 }],
  },
  minutes: {
    from: 47,
    to: 71,
    parts: { closure: 5, rig: 12, lower: 8, package: 10, raise: 18, wait: 0 },
  },
  why: [],
};

const force = (
  at: string,
  kind: 'hold' | 'strength',
  kn: number,
  factor: number,
  required: number,
): StudyLayout['forces'][number] => ({
  at,
  kind,
  kn,
  towardDeg: 225,
  capacityKn: kn * factor,
  factor,
  required,
  ok: factor >= required ? 'yes' : 'no',
  points: 1,
  rule: 'fixture',
});

/** Turned up the road to the east: turn 2 m behind the edge, anchor 24 m along, throw limited by the field. */
const turned: StudyLayout = {
  ...common,
  id: 'turned-1',
  kind: 'turned',
  anchor: 'S:B',
  turn: 'S:A',
  points: {
    edge: positionAt(0, 0),
    turn: positionAt(0, 2),
    anchor: positionAt(24, 2),
    belayAnchor: positionAt(-3, 3),
    handTurn: null,
  },
  lines: {
    main: { anchor: 'S:B', deviceAt: 'S:A', captureAt: 'S:A', turn: 'S:A' },
    belay: { anchor: 'S:A', deviceAt: 'S:A', runM: 5, sharesAnchorWith: null },
    hand: null,
  },
  haulFieldM: 24,
  throwM: 21.5,
  raiseM: 52,
  pulls: 3,
  resets: 2,
  mechanicalAdvantage: '3:1',
  turnAngleDeg: 90,
  keepOut: keepOut([
    [24, 2],
    [0, 2],
    [0, 0],
  ]),
  forces: [
    force('change of direction, hauling', 'hold', 5.4, 3.99, 4),
    force('change of direction, hauling', 'strength', 5.4, 7.4, 5),
    force('main anchor, hauling', 'hold', 3.9, 4.6, 3),
  ],
  rank: 1,
  reasons: [
    {
      quantity: 'pulls',
      value: 3,
      unit: '',
      formula: 'ceil((raise + ropeStretch * stretched) / (throwM - sitBackM))',
      inputs: { raise: 52, ropeStretch: 0.03, stretched: 60, throwM: 21.5, sitBackM: 0.25 },
      source: 'practice',
    },
    {
      quantity: 'throw',
      value: 21.5,
      unit: 'm',
      formula: 'fieldM - clearanceNearM - clearanceAnchorM',
      inputs: { fieldM: 24, clearanceNearM: 1, clearanceAnchorM: 1.5 },
      source: 'practice',
    },
  ],
};

const straight: StudyLayout = {
  ...common,
  id: 'straight-1',
  kind: 'straight',
  anchor: 'S:C',
  turn: null,
  points: {
    edge: positionAt(0, 0),
    turn: null,
    anchor: positionAt(0, 6),
    belayAnchor: positionAt(1, 6),
    handTurn: positionAt(0, 6),
  },
  lines: {
    main: { anchor: 'S:C', deviceAt: 'S:C', captureAt: 'S:C', turn: null },
    belay: { anchor: 'S:C', deviceAt: 'S:C', runM: 6, sharesAnchorWith: 'S:C' },
    hand: { anchor: 'S:C' },
  },
  haulFieldM: 6,
  throwM: 3.5,
  raiseM: 52,
  pulls: 16,
  resets: 15,
  mechanicalAdvantage: '3:1',
  turnAngleDeg: null,
  keepOut: keepOut([]),
  forces: [force('main anchor, hauling', 'hold', 3.9, 4.6, 3)],
  rank: 2,
  reasons: [],
};

/** The fixture's slope due south of an east–west road, with a turned and a straight haul; made by hand, not computed. */
export function studyWithLayouts(change: Partial<Study> = {}): Study {
  const base = studyFixture();
  const end = { ...base.descent!.end, ...positionAt(0, -45) };
  return {
    ...base,
    descent: { ...base.descent!, azimuthDeg: 180, end },
    bench,
    spots: [
      spot('S:A', 'Engine 1', -7, 4, 90),
      spot('S:B', 'Engine 2', 29, 3.5, 270),
      spot('S:C', 'Engine 1', -2, 7, 90),
    ],
    layouts: [turned, straight],
    marks: [{ id: 'T1', kind: 'tree', name: 'lone pine', geometry: { type: 'Point', coordinates: at(-10, 10) } }],
    sentence: 'Plan as steep: 33°, 31 to 36 (rule 30/45).',
    ...change,
  };
}

function at(eastM: number, northM: number): [number, number] {
  const { lon, lat } = positionAt(eastM, northM);
  return [lon, lat];
}
