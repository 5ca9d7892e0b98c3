import type { BreakChain } from './break-chain.ts';
import type { ModelTables } from './model-tables.ts';
import { normalTable } from './normal-table.ts';
import type { SlopeModel } from './slope-model.ts';
import { whiten, whitenTransposed } from './whitening.ts';

/**
 * Draws one ground given the heights, at the chain's present breaks and level: slopes from their conditional normal, then
 * the roughness by conditioning a free simulation on the data (Matheron's rule) [source: doucet2010].
 * `fallM` is the data as given to the chain; `out` receives the fall of the drawn ground at each knot, metres, less the
 * same mean first slope. `index` numbers the draw; the same index draws the same.
 */
export function groundDrawer(
  model: SlopeModel,
  tables: ModelTables,
  chain: BreakChain,
  fallM: Float64Array,
): (index: number, out: Float64Array) => void {
  const { count: n, knotM } = tables.knots;
  const normals = normalTable();
  const coefficients = new Float64Array(model.breakSlots);
  const changes = new Float64Array(n);
  const free = new Float64Array(n);
  const rest = new Float64Array(n);
  const white = new Float64Array(n);
  const solved = new Float64Array(n);
  let at = 0;
  const normal = (): number => {
    if (at >= normals.length) at -= normals.length;
    return normals[at++];
  };

  function drawPieces(out: Float64Array): void {
    const count = chain.factorise();
    const { table, base } = chain.evidence[chain.state.level];
    const { active, factor, solution } = chain;
    const stride = model.breakSlots;
    const { breaks } = tables;
    const { baseRamps, baseInverse } = table;
    let bh = base[0];
    let bs = base[1];
    changes.fill(0);
    for (let i = count - 1; i >= 0; i--) {
      let value = solution[i] + normal();
      for (let j = i + 1; j < count; j++) value -= factor[j * stride + i] * coefficients[j];
      value /= factor[i * stride + i];
      coefficients[i] = value;
      changes[active[i] + 1] += value;
      bh -= value * baseRamps[active[i]];
      bs -= value * baseRamps[breaks + active[i]];
    }
    const [hh, hs, ss] = baseInverse;
    const rootH = Math.sqrt(hh);
    const e1 = normal();
    const height = hh * bh + hs * bs + rootH * e1;
    let slope = hs * bh + ss * bs + (hs / rootH) * e1 + Math.sqrt(Math.max(0, ss - (hs * hs) / hh)) * normal();
    let fall = height;
    for (let k = 0; k < n; k++) {
      out[k] = fall;
      if (k > 0) slope += changes[k];
      fall += slope * knotM;
    }
  }

  function addRoughness(out: Float64Array): void {
    const { table } = chain.evidence[chain.state.level];
    const { roughness, error, whitening } = table;
    if (roughness.kind === 'none') return;
    if (roughness.kind === 'waves') freeWaves(roughness.rmsM);
    else freeWander(roughness.tanPerRootM);
    const keep = error.lagOne;
    const sd = Math.sqrt(error.variance);
    const fresh = sd * Math.sqrt(1 - keep * keep);
    let e = sd * normal();
    for (let k = 0; k < n; k++) {
      rest[k] = fallM[k] - out[k] - free[k] - e;
      e = keep * e + fresh * normal();
    }
    whiten(whitening, rest, white);
    whitenTransposed(whitening, white, solved);
    // the part of `rest` that the roughness explains is all of it less the error's share, error covariance × solved
    let ahead = 0;
    for (let k = 0; k < n; k++) {
      ahead = keep * ahead + solved[k];
      white[k] = ahead;
    }
    let behind = 0;
    for (let k = n - 1; k >= 0; k--) {
      out[k] += free[k] + rest[k] - error.variance * (white[k] + behind);
      behind = keep * (behind + solved[k]);
    }
  }

  function freeWaves(rmsM: number): void {
    const { phase, keep, heightScale } = tables.wave;
    const rms = rmsM * heightScale;
    const cos = keep * Math.cos(phase);
    const sin = keep * Math.sin(phase);
    const fresh = rms * Math.sqrt(1 - keep * keep);
    let a = rms * normal();
    let b = rms * normal();
    for (let k = 0; k < n; k++) {
      free[k] = a;
      const next = cos * a - sin * b + fresh * normal();
      b = sin * a + cos * b + fresh * normal();
      a = next;
    }
  }

  function freeWander(tanPerRootM: number): void {
    const sd = tanPerRootM * Math.sqrt(knotM);
    let slope = 0;
    let height = 0;
    free[0] = 0;
    for (let k = 1; k < n; k++) {
      height += slope * knotM;
      free[k] = height;
      slope += sd * normal();
    }
  }

  return (index, out) => {
    at = (index * 7919) % normals.length;
    drawPieces(out);
    addRoughness(out);
  };
}
