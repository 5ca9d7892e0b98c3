import type { Bench } from '../../src/road/index.ts';
import type { EdgeKey } from './edge-key.ts';

/** Key points at the ends of a road are left out, stations. */
const ENDS = 4;
/** Key points farther apart than this are no line: there the key jumps from one break to another, metres. */
const JUMP_M = 2;
/** Stations along the drawn and the true line differ by less than this. */
const NEAR = 30;

/**
 * Offset of the key edge from the road line as drawn at every station of a bench: where the key's line crosses the normal
 * of the drawn line, nearest to the road; NaN where it does not.
 */
export function keyOffsets(
  { firstStationM, x, y, normalX, normalY, count }: Bench,
  key: EdgeKey,
  reachM = 40,
): Float64Array {
  const out = new Float64Array(count).fill(Number.NaN);
  for (let i = 0; i < count; i++) {
    const station = firstStationM + i;
    const last = Math.min(key.x.length - ENDS - 1, station + NEAR);
    for (let k = Math.max(ENDS, station - NEAR); k < last; k++) {
      const a = along(k, i);
      const b = along(k + 1, i);
      if (!(a * b <= 0) || a === b) continue;
      if (Math.hypot(key.x[k + 1] - key.x[k], key.y[k + 1] - key.y[k]) > JUMP_M) continue;
      const t = a / (a - b);
      const offset = across(k, i) + t * (across(k + 1, i) - across(k, i));
      if (Math.abs(offset) < reachM && !(Math.abs(out[i]) <= Math.abs(offset))) out[i] = offset;
    }
  }
  return out;

  function along(k: number, i: number): number {
    return (key.x[k] - x[i]) * -normalY[i] + (key.y[k] - y[i]) * normalX[i];
  }
  function across(k: number, i: number): number {
    return (key.x[k] - x[i]) * normalX[i] + (key.y[k] - y[i]) * normalY[i];
  }
}

/** Quantile of the finite values, by rank. */
export function quantile(values: ArrayLike<number>, share: number): number {
  const sorted = Array.from(values)
    .filter(Number.isFinite)
    .sort((a, b) => a - b);
  return sorted.length === 0 ? Number.NaN : sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))];
}

/** Largest mean of ten neighbours, all of them known. */
export function worstRun(values: ArrayLike<number>, length = 10): number {
  let worst = 0;
  for (let i = 0; i + length <= values.length; i++) {
    let sum = 0;
    for (let k = 0; k < length; k++) sum += values[i + k];
    if (sum / length > worst) worst = sum / length;
  }
  return worst;
}
