import { localPlane } from '../../src/geo/index.ts';
import { type Grid, type Ground, sampleLine, sampleLineCubic } from '../../src/terrain/index.ts';
import { seededRandom } from '../../src/units/index.ts';
import { bareEarth } from '../helpers/plane-ground.ts';
import { sideBySide, span } from './harness.ts';

const SIDE = 720;
const LINES = 20_000;
/** One cross-section: 40 m to each side, every half metre. */
const SAMPLES = 161;
const STEP_M = 0.5;
const RUNS = 15;

/** Bilinear heights along transects against a plain loop over typed arrays that does the same arithmetic without checks. */
export async function benchSampling(print: (line: string) => void): Promise<void> {
  for (const kind of ['Float32Array', 'Float64Array'] as const) {
    const ground = makeGround(kind);
    const lines = makeLines();
    const out = new Float64Array(SAMPLES);
    const ways = {
      plain: () => over(lines, (x, y, dx, dy) => plainLine(ground.layers[0].grid, x, y, dx, dy, out), out),
      bilinear: () => over(lines, (x, y, dx, dy) => sampleLine(ground, x, y, dx, dy, SAMPLES, out), out),
      cubic: () => over(lines, (x, y, dx, dy) => void sampleLineCubic(ground, x, y, dx, dy, SAMPLES, out), out),
    };
    const { plain, bilinear, cubic } = await sideBySide(RUNS, ways);
    const nanoseconds = (ms: number): string => ((ms * 1e6) / (LINES * SAMPLES)).toFixed(1);
    print(
      `${LINES} transects of ${SAMPLES} heights, ${kind}; milliseconds, least and most of ${RUNS} after a warm-up
  plain loop ${span(plain)} (${nanoseconds(plain.min)} ns a height)   bilinear ${span(bilinear)} = ${(bilinear.min / plain.min).toFixed(2)} ×   cubic ${span(cubic)} = ${(cubic.min / plain.min).toFixed(2)} ×`,
    );
  }
}

function over(
  lines: Float64Array,
  read: (x: number, y: number, dx: number, dy: number) => void,
  out: Float64Array,
): number {
  let sum = 0;
  for (let i = 0; i < lines.length; i += 4) {
    read(lines[i], lines[i + 1], lines[i + 2], lines[i + 3]);
    sum += out[i % SAMPLES];
  }
  return sum;
}

/** The same cells and weights; the caller answers for staying inside, and there are no missing cells. */
function plainLine({ width, data }: Grid, x0: number, y0: number, dx: number, dy: number, out: Float64Array): void {
  const half = (SIDE - 1) / 2;
  for (let i = 0; i < SAMPLES; i++) {
    const col = half + x0 + i * dx;
    const row = half - y0 - i * dy;
    const ci = col | 0;
    const ri = row | 0;
    const a = col - ci;
    const b = row - ri;
    const k = ri * width + ci;
    const north = data[k] * (1 - a) + data[k + 1] * a;
    const south = data[k + width] * (1 - a) + data[k + width + 1] * a;
    out[i] = north * (1 - b) + south * b;
  }
}

function makeGround(kind: 'Float32Array' | 'Float64Array'): Ground {
  const random = seededRandom(6);
  const data = kind === 'Float32Array' ? new Float32Array(SIDE * SIDE) : new Float64Array(SIDE * SIDE);
  for (let k = 0; k < data.length; k++) data[k] = 500 + 0.3 * (k % SIDE) + random.normal();
  const half = (SIDE - 1) / 2;
  const grid: Grid = { width: SIDE, height: SIDE, data, x0: -half, y0: half, stepX: 1, stepY: 1 };
  const fit = Float64Array.of(half, 1, 0, 0, half, 0, -1, 0, 0, 0, 0, 0);
  return { plane: localPlane({ lon: -128, lat: 44 }), layers: [{ info: bareEarth, grid, fit }] };
}

/** Starts and steps of lines in every direction that stay inside: x, y, dx, dy. */
function makeLines(): Float64Array {
  const random = seededRandom(9);
  const lines = new Float64Array(LINES * 4);
  const room = SIDE / 2 - SAMPLES * STEP_M - 2;
  for (let i = 0; i < lines.length; i += 4) {
    const turn = 2 * Math.PI * random.next();
    lines[i] = room * (2 * random.next() - 1);
    lines[i + 1] = room * (2 * random.next() - 1);
    lines[i + 2] = STEP_M * Math.cos(turn);
    lines[i + 3] = STEP_M * Math.sin(turn);
  }
  return lines;
}
