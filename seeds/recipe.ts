import type { Box } from './fields/raster.ts';
import type { PegPlan } from './road/peg.ts';

/** Everything that chance and judgement decide of the demo district. All invented; see data/PROVENANCE.md. */

/** Change it and the ground changes everywhere. */
export const seed = 20417;

/** The 1 m raster, EPSG:32609 metres: whole tiles of 512, around 44.0 N, 128.0 W, in the open Pacific. */
export const area: Box = { west: 578176, south: 4870656, east: 578176 + 4096, north: 4870656 + 3072 };

/** How far the 10 m raster reaches past the 1 m one. */
export const widerM = 2000;

/** Error like that of lidar ground points: Gaussian, one sigma, metres, covariance exp(−d / correlationM). */
export const noise = { sigmaM: 0.05, correlationM: 2 } as const;

/** One sigma of the 10 m raster's error, metres: that of the US 1/3 arc-second elevation (USGS). */
export const coarseNoiseM = 0.82;

/** The day the ground is said to have been flown. */
export const collectedOn = '2023-06-18';

/** The creek's course from west to east: offsets from the area's south-west corner, metres. */
export const creekCourse: readonly (readonly [x: number, y: number])[] = [
  [-2600, 1900],
  [-1900, 950],
  [-1100, 1850],
  [-350, 900],
  [250, 850],
  [650, 1750],
  [1250, 1650],
  [1500, 650],
  [2150, 550],
  [2450, 1450],
  [3000, 1500],
  [3350, 600],
  [4000, 400],
  [4500, 1250],
  [5300, 1000],
  [6600, 300],
];

/**
 * Bed of the creek, metres: at the west end of its course, its fall per metre along it, half its width, the height of the
 * floor above the bed, the walls' slope behind the floor; and the floor's half width on the left and right bank by station.
 */
export const creek = {
  sourceM: 742,
  fallPerM: 0.024,
  halfWidthM: 2.2,
  bankM: 1.1,
  wall: 0.9,
  floor: [
    [0, 10, 10],
    [2900, 8, 20],
    [3300, 14, 8],
    [3900, 8, 26],
    [4600, 10, 8],
    [4850, 64, 10],
    [5150, 60, 10],
    [5350, 9, 30],
    [6000, 9, 10],
    [6600, 24, 12],
    [7200, 8, 24],
    [9000, 20, 20],
    [14000, 10, 10],
  ],
} as const;

/** How the hills were worn; the shape of the land, not a claim about how land forms. */
export const landscape = {
  cellM: 20,
  steps: 110,
  liftPerStepM: 9,
  /** Lift over wear: a channel that drains A m² falls by steepness / √A. */
  steepness: 62,
  /** Steepest stable slope as a tangent, softest and hardest rock. */
  stable: [0.34, 0.95],
  creepShare: 0.1,
} as const;

/** Rms of hollows (waves of about 150 m) and gullies (about 50 m), metres. */
export const relief = { hollowsM: 2.4, gulliesM: 0.7 } as const;

/** A broad even hillside for the switchbacks: middle (from the area's south-west corner), its height, slopes uphill and along, reach. */
export const quarryHill = {
  middle: [240, 1391],
  heightM: 742,
  uphillAzimuthDeg: 305,
  uphill: 0.36,
  along: -0.018,
  halfLengthM: 330,
  halfDepthM: 170,
  blendM: 120,
} as const;

/**
 * Rms of the ground's own unevenness at 3 to 10 m wave length, metres: natural slopes (usual, and spread as a power), fills,
 * cuts, benches; and the share of it that is left of a natural slope at the edge of a road, rising to all of it further out.
 */
export const roughness = {
  naturalM: 0.088,
  naturalSpread: 0.38,
  fillM: 0.032,
  cutM: 0.05,
  benchM: 0.01,
  graded: { share: 0.4, reachM: 9 },
} as const;

const at = (x: number, y: number): [number, number] => [area.west + x, area.south + y];
const hairpin = (bendRadiusM: number, turnDeg: number) => ({ bendRadiusM, turnDeg, grade: 0.045, holdM: 34 });

export type RoadKey = 'cinder' | 'quarry' | 'lantern';

/** The roads lie this much above the line on which the land was pegged: more fill than cut, metres. */
export const raiseM = 0.4;

/** Where the roads begin and how they are pegged out; `joins` names the road whose line a start lies on. */
export const roads: readonly {
  readonly key: RoadKey;
  readonly name: string;
  readonly joins?: RoadKey;
  readonly plan: PegPlan;
}[] = [
  {
    key: 'lantern',
    name: 'Lantern Creek Road',
    plan: {
      start: at(30, 958),
      azimuthDeg: 80,
      legs: [
        { lengthM: 1000, grade: -0.018, minRadiusM: 45 },
        { lengthM: 330, grade: -0.03, minRadiusM: 40 },
        { bendRadiusM: 60, turnDeg: -6, grade: -0.02, holdM: 0 },
        { straightM: 190, grade: -0.015 },
        { lengthM: 480, grade: -0.03, minRadiusM: 48 },
        { lengthM: 500, grade: -0.015, minRadiusM: 60 },
        { lengthM: 640, grade: -0.045, minRadiusM: 45 },
        { bendRadiusM: 45, turnDeg: -72, grade: -0.02, holdM: 0 },
        { straightM: 46, grade: 0 },
        { bendRadiusM: 45, turnDeg: 62, grade: 0.02, holdM: 0 },
        { lengthM: 320, grade: 0.02, minRadiusM: 45 },
        { lengthM: 210, grade: 0.002, minRadiusM: 60 },
      ],
    },
  },
  {
    key: 'cinder',
    name: 'Cinder Grade Road',
    joins: 'lantern',
    plan: {
      start: at(1330, 1352),
      azimuthDeg: 105,
      legs: [
        { straightM: 40, grade: 0.03 },
        { lengthM: 660, grade: 0.085, minRadiusM: 35 },
        { lengthM: 900, grade: 0.075, minRadiusM: 32 },
        { lengthM: 70, grade: 0.055, minRadiusM: 32 },
        { lengthM: 170, grade: 0.002, minRadiusM: 60 },
        { lengthM: 1160, grade: 0.062, minRadiusM: 32 },
      ],
    },
  },
  {
    key: 'quarry',
    name: 'Old Quarry Spur',
    joins: 'lantern',
    plan: {
      start: at(560, 1590),
      azimuthDeg: 215,
      legs: [
        { lengthM: 400, grade: 0.085, minRadiusM: 40 },
        hairpin(13, -178),
        { lengthM: 330, grade: 0.08, minRadiusM: 40 },
        hairpin(14, 178),
        { lengthM: 330, grade: 0.09, minRadiusM: 40 },
        hairpin(15, -176),
        { lengthM: 570, grade: 0.075, minRadiusM: 32 },
        { lengthM: 130, grade: 0.004, minRadiusM: 60 },
      ],
    },
  },
];

/** What is built or found along a road; stations in metres of its true middle line, sides of its direction of drawing. */
export interface Feature {
  readonly road: RoadKey;
  readonly what:
    | 'turnout'
    | 'berm'
    | 'rounded'
    | 'soft shoulder'
    | 'retaining wall'
    | 'sparse returns'
    | 'culvert'
    | 'through-fill'
    | 'bridge'
    | 'divided'
    | 'guardrail'
    | 'flat'
    | 'box cut'
    | 'hairpin'
    | 'mouth';
  readonly from: number;
  readonly to: number;
  readonly side: 'left' | 'right' | 'both';
}

const feature = (road: RoadKey, what: Feature['what'], from: number, to: number, side: Feature['side']): Feature => ({
  road,
  what,
  from,
  to,
  side,
});

/** Fixed before anything was measured on them. */
export const features: readonly Feature[] = [
  feature('lantern', 'turnout', 226, 250, 'right'),
  feature('lantern', 'berm', 340, 385, 'right'),
  feature('lantern', 'soft shoulder', 520, 560, 'right'),
  feature('lantern', 'rounded', 610, 655, 'right'),
  feature('lantern', 'sparse returns', 700, 780, 'right'),
  feature('lantern', 'mouth', 835, 900, 'left'),
  feature('lantern', 'turnout', 1226, 1250, 'right'),
  feature('lantern', 'through-fill', 1380, 1570, 'both'),
  feature('lantern', 'culvert', 1463, 1467, 'both'),
  feature('lantern', 'divided', 1660, 1840, 'both'),
  feature('lantern', 'mouth', 1915, 1990, 'left'),
  feature('lantern', 'berm', 1876, 1908, 'right'),
  feature('lantern', 'guardrail', 2030, 2330, 'right'),
  feature('lantern', 'rounded', 2600, 2650, 'right'),
  feature('lantern', 'retaining wall', 2880, 2950, 'right'),
  feature('lantern', 'bridge', 3168, 3238, 'both'),
  feature('lantern', 'flat', 3640, 3800, 'right'),
  feature('cinder', 'mouth', 0, 105, 'both'),
  feature('cinder', 'turnout', 396, 420, 'right'),
  feature('cinder', 'berm', 560, 605, 'right'),
  feature('cinder', 'rounded', 905, 950, 'right'),
  feature('cinder', 'turnout', 1246, 1270, 'right'),
  feature('cinder', 'box cut', 1490, 1560, 'right'),
  feature('cinder', 'flat', 1700, 1790, 'both'),
  feature('cinder', 'rounded', 1960, 2005, 'right'),
  feature('cinder', 'sparse returns', 2110, 2190, 'right'),
  feature('cinder', 'turnout', 2236, 2256, 'right'),
  feature('cinder', 'soft shoulder', 2320, 2360, 'right'),
  feature('cinder', 'turnout', 2546, 2566, 'right'),
  feature('cinder', 'berm', 2592, 2632, 'right'),
  feature('quarry', 'mouth', 0, 60, 'both'),
  feature('quarry', 'berm', 250, 290, 'left'),
  feature('quarry', 'hairpin', 388, 462, 'both'),
  feature('quarry', 'turnout', 590, 610, 'right'),
  feature('quarry', 'hairpin', 758, 836, 'both'),
  feature('quarry', 'rounded', 935, 975, 'left'),
  feature('quarry', 'hairpin', 1132, 1212, 'both'),
  feature('quarry', 'turnout', 1430, 1450, 'right'),
  feature('quarry', 'flat', 1810, 1888, 'both'),
];

/** Half widths of the benches, metres (left and right alike), and how far they wander. */
export const benches: Readonly<Record<RoadKey, { readonly halfM: number; readonly wanderM: number }>> = {
  lantern: { halfM: 3.8, wanderM: 0.45 },
  cinder: { halfM: 3.3, wanderM: 0.45 },
  quarry: { halfM: 2.7, wanderM: 0.35 },
};
