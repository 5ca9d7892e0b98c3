import type { Point } from 'geojson';
import {
  type Apparatus,
  defaultArrivals,
  defaultFleet,
  defaultKits,
  defaultRates,
  type Mark,
  type UnitArrival,
} from '../../src/book/index.ts';
import { localPlane } from '../../src/geo/index.ts';
import { type Conditions, fairConditions } from '../../src/rigging/index.ts';
import { type RoadTraits, readRoadTags } from '../../src/road/index.ts';
import {
  defaultSpotSettings,
  findLayouts,
  hazardsOf,
  type LayoutQuestion,
  type Layouts,
  standingGround,
} from '../../src/spots/index.ts';
import { type MadeDescent, madeDescent } from '../helpers/made-descent.ts';
import { gravel, type MadeBench, makeBench, paved } from './made-bench.ts';

/** A roadside with a slope below it, and who comes. The site lies on the right of the bench, at 75 m unless said. */
export interface MadeSite {
  readonly bench: MadeBench;
  readonly slope: Omit<MadeDescent, 'x' | 'y' | 'dx' | 'dy'>;
  readonly siteM?: number;
  readonly traits?: RoadTraits;
  readonly conditions?: Conditions;
  readonly fleet?: readonly Apparatus[];
  readonly arrivals?: readonly UnitArrival[];
  /** Trees by station and offset, metres, with trunk diameter. */
  readonly trees?: readonly (readonly [number, number, number])[];
  readonly marks?: readonly Mark[];
}

export const plane = localPlane({ lon: -128, lat: 44 });
export const SITE_M = 75;

export const markAt = (
  id: string,
  kind: Mark['kind'],
  x: number,
  y: number,
  trunkDiameterM: number | null = null,
): Mark => {
  const { lon, lat } = plane.toLonLat({ x, y });
  const geometry: Point = { type: 'Point', coordinates: [lon, lat] };
  return { id, kind, name: null, geometry, trunkDiameterM, heightM: null };
};

/** The question that a made site asks. */
export function questionOf(site: MadeSite, reachM?: number): LayoutQuestion {
  const bench = makeBench({ lengthM: 150, ...site.bench });
  const i = site.siteM ?? SITE_M;
  const settings = reachM === undefined ? defaultSpotSettings : { ...defaultSpotSettings, reachM };
  const marks = [
    ...(site.trees ?? []).map(([s, q, d], k) => {
      const x = bench.x[s] + q * bench.normalX[s];
      const y = bench.y[s] + q * bench.normalY[s];
      return markAt(`T${k + 1}`, 'tree', x, y, d);
    }),
    ...(site.marks ?? []),
  ];
  const ground = standingGround({
    ...{ bench, traits: site.traits ?? paved, hazards: hazardsOf(marks, [], plane) },
    ...{ conditions: site.conditions ?? fairConditions, settings, ground: null },
    site: { stationM: i, side: 1 },
  });
  const descent = madeDescent({
    ...{ x: bench.right.edgeX[i], y: bench.right.edgeY[i], dx: bench.normalX[i], dy: bench.normalY[i] },
    ...site.slope,
  });
  const arrivals = site.arrivals ?? defaultArrivals;
  return {
    ...{ ground, descent, fleet: site.fleet ?? defaultFleet, arrivals, kits: defaultKits, marks, plane },
    ...{ rates: defaultRates, patients: 1, screeningOnly: false, pins: {} },
  };
}

export const layoutsOf = (site: MadeSite, reachM?: number): Layouts => findLayouts(questionOf(site, reachM));

const cut = (widthM: number) => ({ kind: 'rise', widthM: () => widthM, slope: 1 }) as const;
const drop = (widthM: number) => ({ kind: 'drop', widthM: () => widthM, slope: -0.6 }) as const;
const turnout = (m: number, more: number, halfM: number) =>
  ({ kind: 'drop', widthM: (s: number) => m + (Math.abs(s - SITE_M) <= halfM ? more : 0), slope: -0.6 }) as const;
const two = (left: number, right: number, more: MadeBench = {}): MadeBench => ({
  ...{ left: cut(left), right: drop(right), crossfallDeg: () => 1.15, gradeDeg: () => 1.15 },
  ...more,
});
const lone: readonly UnitArrival[] = defaultArrivals.filter(({ unit }) => /Engine 1|Medic|Mutual/.test(unit));
const freeway = readRoadTags({ highway: 'motorway', lanes: '4', oneway: 'yes', surface: 'asphalt', width: '14.6' });

/** One of the sixteen typical roadsides, and what it must come to: advantage, team, resets, least and full crew. */
export interface TypicalSite extends MadeSite {
  readonly name: string;
  /** Null where the instructor names none. */
  readonly kind: 'straight' | 'turned' | null;
  readonly advantage: '3:1' | '5:1';
  readonly team: number;
  readonly resets: number | null;
  readonly people: readonly [number, number] | null;
}

export const typicalSites: readonly TypicalSite[] = [
  {
    name: '1: 20°, 15 m, shoulder 4 m',
    bench: two(3.5, 7),
    slope: { angleDeg: 20, groundM: 15 },
    ...expected(null, '3:1', 3, null, null),
  },
  {
    name: '2: 30°, 25 m, bench 10 m',
    bench: two(3.5, 6.5),
    slope: { angleDeg: 30, groundM: 25 },
    ...expected('turned', '3:1', 4, 2, [12, 18]),
  },
  {
    name: '3: 33°, 45 m, bench 7.5 m',
    bench: two(3.5, 4),
    slope: { angleDeg: 33, groundM: 45 },
    ...expected('turned', '3:1', 5, 2, [13, 19]),
  },
  {
    name: '4: 35°, 60 m, turnout 30 × 5 m',
    bench: { ...two(3.5, 3.5), right: turnout(3.5, 5, 15) },
    slope: { angleDeg: 35, groundM: 60 },
    ...expected('turned', '3:1', 6, 3, [14, 20]),
  },
  {
    name: '5: 38°, 80 m, bend of 40 m',
    bench: two(3.5, 3.5, { curvature: () => 1 / 40 }),
    slope: { angleDeg: 38, groundM: 80 },
    ...expected('turned', '3:1', 7, 4, [15, 21]),
  },
  {
    name: '6: 28°, 100 m',
    bench: two(3.5, 4),
    slope: { angleDeg: 28, groundM: 100 },
    ...expected('turned', '3:1', 4, null, null),
  },
  {
    name: '7: 42°, 30 m, lip 50°',
    bench: two(3.5, 4.5),
    slope: { angleDeg: 42, groundM: 30, lipDeg: 50 },
    ...expected('turned', '5:1', 6, 2, [14, 20]),
  },
  {
    name: '8: through-fill 5.5 m, 30°, 20 m',
    bench: { ...two(2.75, 2.75), left: drop(2.75) },
    slope: { angleDeg: 30, groundM: 20 },
    ...expected('turned', '3:1', 4, 2, [12, 18]),
  },
  {
    name: '9: 8 % grade, 32°, 30 m',
    bench: two(3.5, 4, { gradeDeg: () => 4.574 }),
    slope: { angleDeg: 32, groundM: 30 },
    ...expected('turned', '3:1', 5, 1, [13, 19]),
  },
  {
    name: '10: gravel 6.5 m, 31°, 35 m',
    bench: two(3.25, 3.25),
    traits: gravel,
    slope: { angleDeg: 31, groundM: 35 },
    ...expected('turned', '3:1', 5, 2, [13, 19]),
  },
  {
    name: '11: lone engine, 27°, 20 m',
    bench: two(3.5, 5),
    arrivals: lone,
    slope: { angleDeg: 27, groundM: 20 },
    ...expected('straight', '3:1', 4, 6, [12, 18]),
  },
  {
    name: '12: wet, 33°, 30 m, bench 9 m',
    bench: two(3.5, 5.5),
    conditions: { ...fairConditions, wet: true },
    slope: { angleDeg: 33, groundM: 30 },
    ...expected('turned', '3:1', 6, 1, [14, 20]),
  },
  {
    name: '13: trees only, track 6 m, 30°, 30 m',
    bench: two(3, 3),
    traits: gravel,
    fleet: [],
    trees: [
      [72, -2.3, 0.4],
      [94, -2.3, 0.4],
      [73, -3.2, 0.35],
    ],
    slope: { angleDeg: 30, groundM: 30 },
    ...expected('turned', '3:1', 4, 2, [12, 18]),
  },
  {
    name: '14: switchback, 34°, 35 m',
    bench: two(3.5, 4),
    slope: { angleDeg: 34, groundM: 35 },
    ...expected('turned', '3:1', 6, 2, null),
  },
  {
    name: '15: freeway, shoulder 3 m, 28°, 20 m',
    bench: two(8, 10.3),
    traits: freeway,
    slope: { angleDeg: 28, groundM: 20 },
    ...expected('turned', '3:1', 4, 1, [12, 18]),
  },
  {
    name: '16: 25°, 8 m bank',
    bench: two(3.5, 4),
    slope: { angleDeg: 25, groundM: 8 },
    ...expected(null, '3:1', 3, null, null),
  },
];

function expected(
  kind: 'straight' | 'turned' | null,
  advantage: '3:1' | '5:1',
  team: number,
  resets: number | null,
  people: readonly [number, number] | null,
) {
  return { kind, advantage, team, resets, people };
}
