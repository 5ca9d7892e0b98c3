import type { Bench } from '../road/index.ts';

/**
 * Places a point of the local plane on the bench: `out[0]` its element of the bench (station less the first one, with
 * fractions), `out[1]` its offset from the line as drawn, metres, positive to the right. The walk starts at element `from`,
 * which keeps it on the right leg of a hairpin. False past the ends of the bench, and where sections cross.
 */
export function placeOnBench(bench: Bench, x: number, y: number, from: number, out: Float64Array): boolean {
  pair[0] = x;
  pair[1] = y;
  return placePair(bench, pair, 0, from, out);
}

const pair = new Float64Array(2);

/** `placeOnBench` of the pair that begins at element `k` of a list of x, y pairs: without a number made for each call. */
export function placePair(bench: Bench, xy: Float64Array, k: number, from: number, out: Float64Array): boolean {
  const x = xy[k];
  const y = xy[k + 1];
  const { x: lineX, y: lineY, normalX, normalY, count } = bench;
  const last = count - 2;
  let i = Math.max(0, Math.min(last, Math.floor(from)));
  let here = (y - lineY[i]) * normalX[i] - (x - lineX[i]) * normalY[i];
  let next = (y - lineY[i + 1]) * normalX[i + 1] - (x - lineX[i + 1]) * normalY[i + 1];
  while (next > 0 && i < last) {
    i++;
    here = next;
    next = (y - lineY[i + 1]) * normalX[i + 1] - (x - lineX[i + 1]) * normalY[i + 1];
  }
  while (here < 0 && i > 0) {
    i--;
    next = here;
    here = (y - lineY[i]) * normalX[i] - (x - lineX[i]) * normalY[i];
  }
  if (!(here >= 0 && next <= 0)) return false;
  const t = here === next ? 0 : here / (here - next);
  const nx = normalX[i] + t * (normalX[i + 1] - normalX[i]);
  const ny = normalY[i] + t * (normalY[i + 1] - normalY[i]);
  const px = lineX[i] + t * (lineX[i + 1] - lineX[i]);
  const py = lineY[i] + t * (lineY[i + 1] - lineY[i]);
  out[0] = i + t;
  out[1] = ((x - px) * nx + (y - py) * ny) / Math.sqrt(nx * nx + ny * ny);
  return true;
}

/** The element of the bench whose point of the drawn line is nearest to a point: where a walk may start. */
export function nearestElement({ x: lineX, y: lineY, count }: Bench, x: number, y: number): number {
  let best = 0;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < count; i++) {
    const dx = x - lineX[i];
    const dy = y - lineY[i];
    const square = dx * dx + dy * dy;
    if (square < least) {
      least = square;
      best = i;
    }
  }
  return best;
}

/** True azimuth of the direction of drawing at an element, degrees, 0 to 360. */
export function roadAzimuthDeg({ normalX, normalY }: Bench, i: number): number {
  const azimuth = (Math.atan2(-normalY[i], normalX[i]) * 180) / Math.PI;
  return azimuth < 0 ? azimuth + 360 : azimuth;
}
