import { type Random, seededRandom } from '../../src/units/index.ts';

/** Kinds of simulated hillside, after the trial that the estimator's first settings come from. */
export const slopeKinds = [
  'plane',
  'two',
  'three',
  'convex',
  'concave',
  'S',
  'bench',
  'rough 0.05',
  'rough 0.1',
  'rough 0.3',
  'wall',
] as const;
export type SlopeKind = (typeof slopeKinds)[number];

export interface SlopeCase {
  readonly kind: SlopeKind;
  readonly lengthM: number;
  /** Root mean square of waves laid over every kind, metres; the rough kinds bring their own instead. */
  readonly wavesM: number;
  readonly sigmaM: number;
  readonly correlationM: number;
  /** Angle that the shape's steepest piece is made of, degrees. */
  readonly steepDeg: number;
  readonly seed: number;
  readonly cellM: number;
}

/** A simulated hillside: truth anywhere, and the raster's noisy heights at its posts. Metres; x and y as the descent's plane. */
export interface SlopeGround {
  readonly truth: (x: number, y: number) => number;
  /** Noisy height at the post (col, row), which lies at x = col·cellM, y = row·cellM. */
  readonly post: (col: number, row: number) => number;
  /** Descent: starts at `start`, runs along the unit vector (ux, uy). */
  readonly start: readonly [x: number, y: number];
  readonly direction: readonly [ux: number, uy: number];
}

const WAVES = 48;
const ERROR_COSINES = 400;

/** Builds the hillside of one case. Everything in it is drawn from the case's seed. */
export function slopeGround(c: SlopeCase): SlopeGround {
  const random = seededRandom(c.seed);
  const azimuth = random.next() * 2 * Math.PI;
  const direction: [number, number] = [Math.cos(azimuth), Math.sin(azimuth)];
  const start: [number, number] = [random.next(), random.next()];
  const oblique = (random.next() - 0.5) * 2 * (20 / 57.3);
  const [dx, dy] = [Math.cos(azimuth + oblique), Math.sin(azimuth + oblique)];
  const skew = (random.next() - 0.5) * 0.6;
  const shape = slopeShape(c, random);
  const waves = waveField(waveRms(c), random);
  const error = exponentialField(c.sigmaM, c.correlationM, random);
  const truth = (x: number, y: number): number => {
    const along = (x - start[0]) * dx + (y - start[1]) * dy;
    const across = -(x - start[0]) * dy + (y - start[1]) * dx;
    return -shape(along + skew * across) + waves(x, y);
  };
  return {
    truth,
    post: (col, row) => truth(col * c.cellM, row * c.cellM) + error(col * c.cellM, row * c.cellM),
    start,
    direction,
  };
}

function waveRms(c: SlopeCase): number {
  if (c.kind === 'rough 0.05') return 0.05;
  if (c.kind === 'rough 0.1') return 0.1;
  if (c.kind === 'rough 0.3') return 0.3;
  return c.wavesM;
}

/** Fall below the edge as a function of distance, metres. */
function slopeShape(c: SlopeCase, random: Random): (s: number) => number {
  const steep = Math.tan(c.steepDeg / 57.29577951308232);
  const { lengthM: length } = c;
  const uniform = (low: number, high: number): number => low + (high - low) * random.next();
  const pieces = (breaks: number[], slopes: number[]) => (s: number) => {
    let fall = 0;
    let from = -1000;
    for (let i = 0; i <= breaks.length; i++) {
      const to = i < breaks.length ? breaks[i] : Infinity;
      if (s <= from) break;
      const low = Math.max(from, 0);
      if (i === 0) fall += slopes[0] * Math.min(s, to);
      else fall += slopes[i] * (Math.min(s, to) - low);
      from = to;
    }
    return fall;
  };
  switch (c.kind) {
    case 'two': {
      const gentle = steep * uniform(0.4, 0.9);
      const at = length * uniform(0.25, 0.75);
      return random.next() < 0.5 ? pieces([at], [steep, gentle]) : pieces([at], [gentle, steep]);
    }
    case 'three': {
      const at = [length * uniform(0.15, 0.45), length * uniform(0.55, 0.85)];
      const slopes = [steep, steep * uniform(0.4, 0.9), steep * uniform(0.4, 0.95)];
      for (let i = 2; i > 0; i--) {
        const j = Math.floor(random.next() * (i + 1));
        [slopes[i], slopes[j]] = [slopes[j], slopes[i]];
      }
      return pieces(at, slopes);
    }
    case 'convex':
    case 'concave': {
      const gentle = steep * uniform(0.3, 0.7);
      const [a, b] = c.kind === 'convex' ? [gentle, steep] : [steep, gentle];
      return (s) =>
        s <= 0
          ? a * s
          : s >= length
            ? a * length + ((b - a) * length) / 2 + b * (s - length)
            : a * s + ((b - a) * s * s) / (2 * length);
    }
    case 'S': {
      const depth = steep * uniform(0.15, 0.35);
      const wave = uniform(0.6, 1.1) * length;
      const phase = uniform(0, 2 * Math.PI);
      const k = (2 * Math.PI) / wave;
      return (s) => (steep - depth) * s + (depth / k) * (Math.sin(k * s + phase) - Math.sin(phase));
    }
    case 'bench': {
      const count = length < 35 ? 1 : length < 60 ? 2 : 3;
      const breaks: number[] = [];
      const slopes = [steep];
      for (let i = 0; i < count; i++) {
        const from = (length * (i + uniform(0.35, 0.75))) / count;
        breaks.push(from, from + uniform(2.5, 5));
        slopes.push(Math.tan(uniform(0, 10) / 57.3), steep * uniform(0.9, 1));
      }
      return pieces(breaks, slopes);
    }
    case 'wall': {
      const at = length * uniform(0.2, 0.8);
      const height = uniform(2, 4);
      const width = uniform(0.1, 0.5);
      return (s) => steep * s + height * Math.min(1, Math.max(0, (s - at) / width));
    }
    default:
      return (s) => steep * s;
  }
}

/** Waves of 3 to 10 m, equal power per octave, all directions. */
export function waveField(rms: number, random: Random): (x: number, y: number) => number {
  if (rms === 0) return () => 0;
  const kx = new Float64Array(WAVES);
  const ky = new Float64Array(WAVES);
  const phase = new Float64Array(WAVES);
  for (let i = 0; i < WAVES; i++) {
    const k = (2 * Math.PI) / (3 * (10 / 3) ** random.next());
    const a = random.next() * 2 * Math.PI;
    kx[i] = k * Math.cos(a);
    ky[i] = k * Math.sin(a);
    phase[i] = random.next() * 2 * Math.PI;
  }
  const size = rms * Math.sqrt(2 / WAVES);
  return (x, y) => {
    let sum = 0;
    for (let i = 0; i < WAVES; i++) sum += Math.cos(kx[i] * x + ky[i] * y + phase[i]);
    return size * sum;
  };
}

/**
 * Gaussian field with covariance σ²·exp(−d/c), as a sum of cosines drawn from its plane spectrum, density
 * ∝ k·(1 + c²k²)^(−3/2) (the Fourier transform of the exponential; derived).
 */
export function exponentialField(sigma: number, c: number, random: Random): (x: number, y: number) => number {
  const kx = new Float64Array(ERROR_COSINES);
  const ky = new Float64Array(ERROR_COSINES);
  const phase = new Float64Array(ERROR_COSINES);
  for (let i = 0; i < ERROR_COSINES; i++) {
    const u = 1 - random.next();
    const k = Math.sqrt(1 / (u * u) - 1) / c;
    const a = random.next() * 2 * Math.PI;
    kx[i] = k * Math.cos(a);
    ky[i] = k * Math.sin(a);
    phase[i] = random.next() * 2 * Math.PI;
  }
  const size = sigma * Math.sqrt(2 / ERROR_COSINES);
  return (x, y) => {
    let sum = 0;
    for (let i = 0; i < ERROR_COSINES; i++) sum += Math.cos(kx[i] * x + ky[i] * y + phase[i]);
    return size * sum;
  };
}
