import { NO_EDGE } from './edge-path.ts';
import { lineFit, medianInPlace, robustLine } from './robust-line.ts';

/** Stations either side that the filter looks at. */
const REACH = 7;
/** A path that moves more than this many samples between stations has jumped: the pieces are filtered apart. */
const JUMP_SAMPLES = 2;
/** Stations either side of a running median. */
const MEDIAN_REACH = 4;
const MAD_TO_SIGMA = 1.4826;

/** Pieces of a side between jumps and gaps: piece number of each station, −1 where there is no edge. */
export function piecesBetweenJumps(path: Int16Array): Int16Array {
  const piece = new Int16Array(path.length).fill(-1);
  let current = -1;
  for (let i = 0; i < path.length; i++) {
    if (path[i] === NO_EDGE) continue;
    const before = i > 0 ? path[i - 1]! : NO_EDGE;
    if (before === NO_EDGE || Math.abs(path[i]! - before) > JUMP_SAMPLES) current++;
    piece[i] = current;
  }
  return piece;
}

/**
 * Edges along the road with the scatter of single sections taken out: a robust straight line over ± 7 stations, inside one
 * piece only, because a filter across a fork would put the edge out in the air. A line keeps tapers where a mean would not.
 * `scatterM` is the robust spread of the unfiltered edges about that line.
 */
export function filterEdges(edgeM: Float64Array, piece: Int16Array): { edgeM: Float64Array; scatterM: Float64Array } {
  const count = edgeM.length;
  const out = new Float64Array(count).fill(Number.NaN);
  const scatter = new Float64Array(count).fill(Number.NaN);
  const size = 2 * REACH + 1;
  const t = new Float64Array(size);
  const v = new Float64Array(size);
  const w = new Float64Array(size);
  const fit = lineFit(size);
  for (let i = 0; i < count; i++) {
    if (piece[i] === -1) continue;
    let n = 0;
    for (let k = -REACH; k <= REACH; k++) {
      const j = i + k;
      if (j < 0 || j >= count || piece[j] !== piece[i] || Number.isNaN(edgeM[j]!)) continue;
      t[n] = k;
      v[n] = edgeM[j]!;
      w[n++] = (1 - Math.abs(k / (REACH + 1)) ** 3) ** 3;
    }
    if (n < 5) {
      out[i] = n > 0 ? medianInPlace(v, n) : Number.NaN;
      scatter[i] = 0.5;
      continue;
    }
    robustLine(t, v, w, n, fit);
    out[i] = fit.a;
    for (let k = 0; k < n; k++) v[k] = Math.abs(v[k]! - fit.a - fit.b * t[k]!);
    scatter[i] = MAD_TO_SIGMA * medianInPlace(v, n);
  }
  return { edgeM: out, scatterM: scatter };
}

/** Running median of a value along the road, ± 4 stations inside one piece; NaN where there is no edge. */
export function medianAlong(values: Float64Array, piece: Int16Array): Float64Array {
  const count = values.length;
  const out = new Float64Array(count).fill(Number.NaN);
  const window = new Float64Array(2 * MEDIAN_REACH + 1);
  for (let i = 0; i < count; i++) {
    if (piece[i] === -1) continue;
    let n = 0;
    for (let j = Math.max(0, i - MEDIAN_REACH); j <= Math.min(count - 1, i + MEDIAN_REACH); j++) {
      if (piece[j] === piece[i] && !Number.isNaN(values[j]!)) window[n++] = values[j]!;
    }
    out[i] = medianInPlace(window, n);
  }
  return out;
}
