import { type Bench, type BenchSide, KIND, type RoadTraits, readRoadTags, UNDER } from '../../src/road/index.ts';
import { type Random, seededRandom } from '../../src/units/index.ts';

type Along = (s: number) => number;

/** A bench by formula: what lies outward of the drawn line on each side, metres, and the road's own slopes, degrees. */
export interface MadeBench {
  readonly lengthM?: number;
  /** Curvature of the line, 1/m, positive to the left. */
  readonly curvature?: Along;
  readonly left?: MadeSide;
  readonly right?: MadeSide;
  readonly gradeDeg?: Along;
  readonly crossfallDeg?: Along;
  readonly shiftM?: number;
}

export interface MadeSide {
  readonly kind?: keyof typeof KIND;
  readonly widthM: Along;
  /** Slope beyond the edge as a tangent, up positive. */
  readonly slope?: number;
  readonly barrierM?: number;
  readonly sigmaM?: number;
}

const cut: MadeSide = { kind: 'rise', widthM: () => 4, slope: 1 };
const fill: MadeSide = { kind: 'drop', widthM: () => 4, slope: -0.6 };

/** A bench as `findBench` would give it, without ground: cut on the left, fill on the right, level, 8 m wide. */
export function makeBench(made: MadeBench = {}): Bench {
  const count = (made.lengthM ?? 150) + 1;
  const [x, y, normalX, normalY] = [0, 0, 0, 0].map(() => new Float64Array(count)) as Float64Array[];
  let heading = Math.PI / 2;
  let [px, py] = [0, 0];
  const fine = 50;
  for (let i = 0; i < count; i++) {
    [x![i], y![i], normalX![i], normalY![i]] = [px, py, Math.cos(heading), -Math.sin(heading)];
    for (let k = 0; k < fine; k++) {
      const half = (made.curvature?.(i + (k + 0.5) / fine) ?? 0) / fine / 2;
      heading -= half;
      px += Math.sin(heading) / fine;
      py += Math.cos(heading) / fine;
      heading -= half;
    }
  }
  const line = { x: x!, y: y!, normalX: normalX!, normalY: normalY! };
  return {
    ...{ firstStationM: 0, count, how: 'computed', rule: 'made for a test' },
    ...line,
    left: sideOf(made.left ?? cut, -1, count, line),
    right: sideOf(made.right ?? fill, 1, count, line),
    shiftM: new Float64Array(count).fill(made.shiftM ?? 0),
    heightM: new Float64Array(count).fill(100),
    gradeDeg: Float64Array.from({ length: count }, (_, i) => made.gradeDeg?.(i) ?? 0),
    crossfallDeg: Float64Array.from({ length: count }, (_, i) => made.crossfallDeg?.(i) ?? 0),
    under: new Uint8Array(count).fill(UNDER.ground),
    notes: [],
  };
}

function sideOf(
  { kind = 'drop', widthM, slope = -0.6, barrierM = Number.POSITIVE_INFINITY, sigmaM = 0.1 }: MadeSide,
  sign: -1 | 1,
  count: number,
  line: Pick<Bench, 'x' | 'y' | 'normalX' | 'normalY'>,
): BenchSide {
  const setback = kind === 'drop' || kind === 'bank' ? 1 : 0.5;
  const out = (f: Along): Float64Array => Float64Array.from({ length: count }, (_, i) => f(i));
  const edge = kind === 'none' ? Number.NaN : 1;
  return {
    edgeOffsetM: out((i) => edge * sign * widthM(i)),
    sigmaM: out(() => sigmaM),
    kind: new Uint8Array(count).fill(KIND[kind]),
    firmOffsetM: out((i) => edge * sign * widthM(i)),
    usableOffsetM: out((i) => sign * Math.max(0, Math.min(widthM(i) - setback, barrierM - 0.5))),
    lipOffsetM: out(() => Number.NaN),
    edgeX: out((i) => line.x[i] + edge * sign * widthM(i) * line.normalX[i]),
    edgeY: out((i) => line.y[i] + edge * sign * widthM(i) * line.normalY[i]),
    ...{ edgeHeightM: out(() => 100), bankM: out(() => Number.NaN) },
    outerSlope: out(() => slope),
    fallM: out(() => (kind === 'drop' ? 5 : 0)),
    above: new Array(count).fill(null),
  };
}

export const paved: RoadTraits = readRoadTags({ highway: 'tertiary', surface: 'asphalt' });
export const gravel: RoadTraits = readRoadTags({ highway: 'unclassified', surface: 'gravel' });

const draw = (random: Random, a: number, b: number): number => a + (b - a) * random.next();

/** A random roadside: straight or bent down to 25 m of radius, 3 to 16 m wide, cuts, fills and level ground, some steep. */
export function randomMade(seed: number): MadeBench {
  const random = seededRandom(seed);
  const side = (): MadeSide => {
    const kind = (['drop', 'drop', 'rise', 'bank', 'none'] as const)[Math.floor(random.next() * 5)]!;
    const base = draw(random, 1.5, 5);
    const more = random.next() < 0.4 ? draw(random, 0, 6) : 0;
    const [at, over] = [draw(random, 20, 40), draw(random, 8, 15)];
    const widthM: Along = (s) => base + more * Math.max(0, Math.min(1, (s - at) / over, (at + over + 25 - s) / over));
    const slope = kind === 'rise' ? 1 : -draw(random, 0.3, 1.2);
    const barrierM = random.next() < 0.2 ? base - draw(random, 0, 0.5) : Number.POSITIVE_INFINITY;
    return { kind, widthM, slope, barrierM, sigmaM: draw(random, 0, 0.3) };
  };
  const bend = random.next() < 0.5 ? 0 : draw(random, -1 / 25, 1 / 25);
  const [grade, crossfall] = [draw(random, -6.5, 6.5), draw(random, -4, 4)];
  return {
    ...{ lengthM: 90, left: side(), right: side(), shiftM: draw(random, -0.5, 0.5) },
    ...{ curvature: () => bend, gradeDeg: () => grade, crossfallDeg: () => crossfall },
  };
}
