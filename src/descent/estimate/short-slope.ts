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

/**
 * One least-squares line over the whole of a short slope, with the largest variance that an error of `sigmaM` can give it:
 * w′Cw with C = σ²·exp(−d/c) (generalised least squares variance; Oksanen and Sarjakoski 2005 for the covariance view), the
 * worst over c. Independent information is no denser than a post every `postM`, so the variance is taken on posts.
 */
export function shortSlope(distanceM: Float64Array, heightM: Float64Array, sigmaM: number, postM: number): ShortSlope {
  const last = distanceM.length - 1;
  const slope = fallSlope(distanceM, heightM, 0, last);
  const sd = worstSlopeSd(distanceM[last] - distanceM[0], sigmaM, postM);
  return {
    medianDeg: toDegrees(Math.atan(slope)),
    sigmaDeg: toDegrees(sd / (1 + slope * slope)),
    rangeDeg: [slope - NINETY_PERCENT * sd, slope + NINETY_PERCENT * sd].map((s) => toDegrees(Math.atan(s))) as [
      number,
      number,
    ],
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
