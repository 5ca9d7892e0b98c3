import {
  type ApparatusAnchor,
  type Arrival,
  type Conditions,
  edgeBend,
  fairConditions,
  type HaulAnchors,
  type HaulArrangement,
  type HaulGround,
} from '../../src/rigging/index.ts';

/** A whole haul worked by hand, with the figures that it must come to, as printed. */
export interface HaulCase {
  readonly name: string;
  readonly ground: HaulGround;
  readonly run: HaulArrangement;
  readonly conditions: Conditions;
  readonly anchors: HaulAnchors;
  readonly arrivals: readonly Arrival[];
  readonly secondApparatusAtMin: number;
  readonly printed: {
    readonly k: number;
    readonly tensions: readonly [number, number, number, number];
    readonly pull: number;
    readonly team: readonly [number, number, number];
    readonly throwM: number;
    readonly raiseM: number;
    readonly pulls: number;
    readonly regrips: number;
    readonly ropes: readonly [number, number | null, number];
    /** Turn, main anchor, belay. */
    readonly holds: readonly [number | null, number, number];
    readonly people: readonly [number, number];
    readonly minutes: number;
  };
}

const dry = fairConditions;
const south = { x: 0, y: -1 };
const east = { x: 1, y: 0 };

/** Fifteen tonnes, four attachments of 40 kN; the road falls to the west by the grade, the bench to the edge in the south by 2 %. */
export const engine = (id: string, grade: number, emptyMassKg = 15_000): ApparatusAnchor => ({
  kind: 'apparatus',
  id,
  emptyMassKg,
  attachmentKn: 40,
  attachments: 4,
  fall: { x: -grade, y: -0.02 },
});

export const firstAlarm: readonly Arrival[] = [
  { atMin: 0, people: 4 },
  { atMin: 8, people: 4 },
  { atMin: 9, people: 2 },
  { atMin: 10, people: 1 },
  { atMin: 12, people: 4 },
  { atMin: 25, people: 8 },
];

const ROPE_UP_M = 0.6;

function ground(governingDeg: number, lipDeg: number, lengthM: number, toBendM: number): HaulGround {
  return {
    governingDeg,
    lipDeg,
    ropeLineM: lengthM,
    groundLengthM: lengthM,
    contacts: [{ bendDeg: edgeBend(lipDeg, ROPE_UP_M, toBendM), friction: null }],
    fullBelay: false,
  };
}

function turned(
  edgeToTurnM: number,
  fieldM: number,
  advantage: HaulArrangement['advantage'],
  walkingRoomM: number,
  throwRopeM: number | null = null,
): HaulArrangement {
  return {
    kind: 'turned',
    system: 'separate haul line',
    advantage,
    edgeToTurnM,
    fieldM,
    belayRunM: edgeToTurnM + 3,
    handTurns: 0,
    walkingRoomM,
    throwRopeM,
  };
}

/** Turn and belay on the first engine, anchor on the second, up or down the road from the turn. */
function turnedAnchors(grade: number, up = true): HaulAnchors {
  const towardMain = up ? east : { x: -1, y: 0 };
  return {
    main: engine('E2', grade),
    turn: { anchor: engine('E1', grade), towardMain },
    belay: engine('E1', grade),
    handTurn: null,
    mainTowardEdge: south,
    belayTowardEdge: south,
  };
}

const common = { conditions: dry, arrivals: firstAlarm, secondApparatusAtMin: 8 };

/** The six whole cases: g 9.80665; every figure follows from statics and the shipped rates (derived). */
export const haulCases: readonly HaulCase[] = [
  {
    ...common,
    name: 'A, 30°, 25 m, turned 3:1',
    ground: ground(30, 30, 25, 3.25),
    run: turned(3.25, 12, '3:1', 35),
    anchors: turnedAnchors(0.02),
    printed: {
      k: 1.162,
      tensions: [2.135, 3.274, 2.525, 2.67],
      pull: 0.875,
      team: [4, 7, 7],
      throwM: 9.5,
      raiseM: 26.25,
      pulls: 3,
      regrips: 0,
      ropes: [32.75, 32.5, 36.75],
      holds: [5.19, 6.22, 8.47],
      people: [12, 18],
      minutes: 37.5,
    },
  },
  {
    ...common,
    name: 'B, 33°, 45 m, turned 3:1',
    ground: ground(33, 33, 45, 2.75),
    run: turned(2.75, 20, '3:1', 30),
    anchors: turnedAnchors(0.02),
    printed: {
      k: 1.172,
      tensions: [2.555, 3.557, 2.751, 2.751],
      pull: 1.048,
      team: [5, 7, 9],
      throwM: 17.5,
      raiseM: 45.75,
      pulls: 3,
      regrips: 1,
      ropes: [52.25, 56.5, 56.25],
      holds: [4.78, 5.72, 8.22],
      people: [13, 19],
      minutes: 45.6,
    },
  },
  {
    ...common,
    name: 'C, 42° with a lip of 50°, 30 m, turned 5:1 on a 60 m haul line',
    ground: ground(42, 50, 30, 2.75),
    run: turned(2.75, 14, '5:1', 30, 60),
    anchors: turnedAnchors(0.02),
    printed: {
      k: 1.336,
      tensions: [4.499, 5.458, 3.869, 3.869],
      pull: 1.221,
      team: [6, 7, 10],
      throwM: 11.2,
      raiseM: 30.75,
      pulls: 3,
      regrips: 1,
      ropes: [37.25, 60, 41.25],
      holds: [3.11, 3.73, 5.85],
      people: [14, 20],
      minutes: 44.0,
    },
  },
  {
    ...common,
    name: 'D, 32°, 30 m, 8 % grade, anchor up the road',
    ground: ground(32, 32, 30, 2.75),
    run: turned(2.75, 20, '3:1', 30),
    anchors: turnedAnchors(0.08),
    printed: {
      k: 1.163,
      tensions: [2.399, 3.447, 2.676, 2.676],
      pull: 0.984,
      team: [5, 7, 8],
      throwM: 17.5,
      raiseM: 30.75,
      pulls: 2,
      regrips: 1,
      ropes: [37.25, 56.5, 41.25],
      holds: [4.39, 3.59, 7.43],
      people: [13, 19],
      minutes: 39.1,
    },
  },
  {
    ...common,
    name: 'E, 27°, 20 m, lone engine, straight 3:1 with the hauling end turned',
    ground: ground(27, 27, 20, 6.5),
    run: {
      kind: 'straight',
      system: 'built in',
      advantage: '3:1',
      edgeToTurnM: 0,
      fieldM: 6.5,
      belayRunM: 6.5,
      handTurns: 1,
      walkingRoomM: 30,
      throwRopeM: null,
    },
    anchors: {
      main: engine('E1', 0.02),
      turn: null,
      belay: engine('E1', 0.02),
      handTurn: null,
      mainTowardEdge: south,
      belayTowardEdge: south,
    },
    arrivals: [
      { atMin: 0, people: 4 },
      { atMin: 9, people: 2 },
      { atMin: 25, people: 8 },
    ],
    secondApparatusAtMin: 0,
    printed: {
      k: 1.182,
      tensions: [2.013, 3.065, 2.293, 2.67],
      pull: 0.825,
      team: [4, 6, 7],
      throwM: 4,
      raiseM: 23,
      pulls: 7,
      regrips: 0,
      ropes: [40, null, 32],
      holds: [null, 7.38, 8.47],
      people: [12, 18],
      minutes: 48.2,
    },
  },
  {
    ...common,
    name: 'F, as B over 30 m, wet',
    conditions: { ...dry, wet: true },
    ground: ground(33, 33, 30, 2.75),
    run: turned(2.75, 20, '3:1', 30),
    anchors: turnedAnchors(0.02),
    printed: {
      k: 1.172,
      tensions: [3.181, 3.557, 2.751, 2.751],
      pull: 1.304,
      team: [6, 7, 11],
      throwM: 17.5,
      raiseM: 30.75,
      pulls: 2,
      regrips: 1,
      ropes: [37.25, 56.5, 41.25],
      holds: [3.37, 3.85, 5.53],
      people: [14, 20],
      minutes: 46.4,
    },
  },
];

/** Case D with its anchor down the road from the turn. */
export const caseDDown: HaulAnchors = turnedAnchors(0.08, false);
