import { toRadians } from '../units/index.ts';
import type { DescentLine } from './descent-line.ts';
import { fallSlope } from './estimate/index.ts';
import { presence } from './presence.ts';
import type { Profile } from './profile.ts';
import type { CrossingKind, Surroundings } from './surroundings.ts';

/** Something that the descent meets on its way: where it begins, metres from the edge, and its width along the descent. */
export interface Crossing {
  readonly kind: CrossingKind;
  readonly distanceM: number;
  readonly widthM: number;
}

/** Sampling of mapped shapes along the descent, metres. */
const STEP_M = 0.25;
/** A shape that begins this near the edge is the own road's, metres. */
const OWN_ROAD_M = 2;
/** A bench wide enough to stand on and stage from: under 15° over at least 3 m (practice). */
const BENCH_TAN = Math.tan(toRadians(15));
const BENCH_LEAST_M = 3;
/** Fit by which the slope of a bench is read, metres. */
const BENCH_FIT_M = 2;
const mapped = ['road', 'water', 'trail'] as const;

/**
 * Mapped roads, water and trails on the descent, and benches of the ground that no mapped thing explains; by distance.
 * What lies at the edge (the own road) or where the descent ends (level ground) is not on the way.
 */
export function crossingsOn(line: DescentLine, profile: Profile, around: Surroundings): Crossing[] {
  const { start, direction, lengthM } = line;
  const isAt = presence(around, start.x, start.y, lengthM);
  const crossings: Crossing[] = [];
  for (const kind of mapped) {
    const test = (d: number): boolean => isAt(kind, start.x + direction.x * d, start.y + direction.y * d);
    for (const [from, to] of runs(test, lengthM)) {
      if (from > OWN_ROAD_M || kind !== 'road') crossings.push({ kind, distanceM: from, widthM: to - from });
    }
  }
  for (const [from, to] of flats(profile)) {
    const explained = crossings.some((c) => c.distanceM < to + 1 && c.distanceM + c.widthM > from - 1);
    if (!explained) crossings.push({ kind: 'bench', distanceM: from, widthM: to - from });
  }
  return crossings.sort((a, b) => a.distanceM - b.distanceM);
}

/** Stretches of [0, length] where a test holds, from samples 0.25 m apart. */
function runs(test: (d: number) => boolean, lengthM: number): [number, number][] {
  const found: [number, number][] = [];
  const count = Math.floor(lengthM / STEP_M);
  let from = -1;
  for (let i = 0; i <= count; i++) {
    const inside = test(i * STEP_M);
    if (inside && from < 0) from = i;
    if (from >= 0 && (!inside || i === count)) {
      found.push([from * STEP_M, i * STEP_M]);
      from = -1;
    }
  }
  return found;
}

/** Benches of the ground: runs under 15° between steeper ground, at least 3 m wide. */
function flats({ distanceM, elevationM, stepM }: Profile): [number, number][] {
  const half = Math.max(1, Math.round(BENCH_FIT_M / 2 / stepM));
  const found: [number, number][] = [];
  const last = distanceM.length - 1;
  let from = -1;
  for (let i = half; i + half <= last; i++) {
    const flat = fallSlope(distanceM, elevationM, i - half, i + half) < BENCH_TAN;
    if (flat && from < 0) from = i;
    if (!flat && from >= 0) {
      const width = distanceM[i - 1] - distanceM[from] + BENCH_FIT_M / 2;
      if (from > half && width >= BENCH_LEAST_M) {
        found.push([distanceM[from] - BENCH_FIT_M / 4, distanceM[i - 1] + BENCH_FIT_M / 4]);
      }
      from = -1;
    }
  }
  return found;
}
