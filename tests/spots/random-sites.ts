import { defaultFleet } from '../../src/book/index.ts';
import { fairConditions } from '../../src/rigging/index.ts';
import { seededRandom, toDegrees } from '../../src/units/index.ts';
import type { MadeSite } from './layout-sites.ts';
import { gravel, paved } from './made-bench.ts';

/** By how much a random site is shifted: degrees of slope, share of its length, metres of bench. */
export interface Shift {
  readonly angleDeg?: number;
  readonly length?: number;
  readonly benchM?: number;
}

const engines = defaultFleet.filter(({ kind }) => kind === 'engine');

/**
 * A random roadside of the kind that a first alarm meets: 18–44°, 10–45 m of slope, a quarter wet, grade 0–10 %, a two-lane
 * road between a cut and an edge, half of them with a shoulder or turnout; two engines.
 */
export function randomSite(seed: number, { angleDeg = 0, length = 1, benchM = 0 }: Shift = {}): MadeSite {
  const random = seededRandom(40_000 + seed);
  const draw = (a: number, b: number): number => a + (b - a) * random.next();
  const angle = draw(18, 44);
  const groundM = draw(10, 45);
  const wet = random.next() < 0.25;
  const gradeDeg = toDegrees(Math.atan(draw(0, 0.1)));
  const left = draw(2.9, 4);
  const right = draw(2.9, 4) + (random.next() < 0.5 ? draw(0.5, 9) : 0);
  const traits = random.next() < 0.25 ? gravel : paved;
  return {
    bench: {
      left: { kind: 'rise', widthM: () => left, slope: 1 },
      right: { kind: 'drop', widthM: () => right + benchM, slope: -0.6 },
      gradeDeg: () => gradeDeg,
      crossfallDeg: () => 1.15,
    },
    slope: { angleDeg: angle + angleDeg, groundM: groundM * length },
    traits,
    conditions: { ...fairConditions, wet },
    fleet: engines,
  };
}

export const shifts: readonly Shift[] = [
  { angleDeg: 1 },
  { angleDeg: -1 },
  { length: 1.04 },
  { length: 0.96 },
  { benchM: 0.2 },
  { benchM: -0.2 },
];
