import { toDegrees, toRadians } from '../../units/index.ts';
import { fallSlope } from './fall-slope.ts';
import { normalAbove } from './normal-share.ts';

/** The angle of a slope too short for more than one window; degrees. */
export interface ShortSlope {
  readonly medianDeg: number;
  readonly sigmaDeg: number;
  readonly rangeDeg: readonly [number, number];
  chanceFrom(limitDeg: number): number;
}

/** Correlation lengths of the error of which the worst is taken, metres. */
const correlationsM = [0.5, 1, 2, 4, 8];
const NINETY_PERCENT = 1.6448536269514722;

/** What the cells cannot show of a 5 m window, one sigma, tan; it grows as the window shrinks (no source, simulated). */
const UNSEEN_TAN = 0.012;
const UNSEEN_WINDOW_M = 5;
/** Part of a cell that is left out at either end, where the ground beyond the slope is smeared into it. */
const END_CELLS = 0.5;
const LEAST_LINE_M = 1;

/** Heights along a short slope, every `stepM`, and the side of the cells that they were read from; metres. */
export interface ShortWindow {
  readonly heightM: Float64Array;
  readonly stepM: number;
  readonly cellM: number;
}

/**
 * One least-squares line over a short slope less half a cell at either end, with the largest variance that an error of
 * `sigmaM` can give it: w′Cw with C = σ²·exp(−d/c) [source: oksanen-sarjakoski2005], the worst over c,
 * and with what the cells cannot show.
 */
export function shortSlope({ heightM, stepM, cellM }: ShortWindow, sigmaM: number): ShortSlope {
  const last = heightM.length - 1;
  const room = Math.floor((last - LEAST_LINE_M / stepM) / 2);
  const cut = Math.max(0, Math.min(Math.round((END_CELLS * cellM) / stepM), room));
  const distance = Float64Array.from(heightM, (_, i) => i * stepM);
  const slope = fallSlope(distance, heightM, cut, last - cut);
  const lengthM = last * stepM;
  const noise = worstSlopeSd((last - 2 * cut) * stepM, sigmaM, Math.max(1, cellM));
  const sd = Math.hypot(noise, (UNSEEN_TAN * UNSEEN_WINDOW_M) / lengthM);
  return {
    medianDeg: toDegrees(Math.atan(slope)),
    sigmaDeg: toDegrees(sd / (1 + slope * slope)),
    rangeDeg: [toDegrees(Math.atan(slope - NINETY_PERCENT * sd)), toDegrees(Math.atan(slope + NINETY_PERCENT * sd))],
    chanceFrom(limitDeg) {
      if (limitDeg >= 90) return 0;
      if (limitDeg <= -90) return 1;
      return normalAbove((Math.tan(toRadians(limitDeg)) - slope) / sd);
    },
  };
}

/** Largest standard deviation of a line's slope over `lengthM`, tan. */
export function worstSlopeSd(lengthM: number, sigmaM: number, postM: number): number {
  const n = Math.max(2, Math.floor(lengthM / postM + 1e-9) + 1);
  const step = lengthM / (n - 1);
  const middle = (n - 1) / 2;
  let square = 0;
  for (let i = 0; i < n; i++) square += ((i - middle) * step) ** 2;
  let worst = 0;
  for (const c of correlationsM) {
    let variance = 0;
    for (let i = 0; i < n; i++) {
      for (let j = 0; j < n; j++) {
        variance += (i - middle) * (j - middle) * Math.exp((-Math.abs(i - j) * step) / c);
      }
    }
    worst = Math.max(worst, (variance * step * step) / (square * square));
  }
  return sigmaM * Math.sqrt(worst);
}
