import type { RoadGround } from './road-ground.ts';

/**
 * The edge by its written definition on noise-free ground: the intersection of the robust bench line (the 5 m before) and
 * slope line (the 4 m after), the middle ± 0.5 m left out. A plain twin of the program: repeated-median lines [source: siegel1982] on samples 0.25 m
 * apart, iterated from the nominal end of the bench.
 */
export interface EdgeKey {
  /** Key edge at every whole metre of the true road line: local metres; NaN where the lines do not meet. */
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly offsetM: Float64Array;
  /** What the noise-free ground does beyond the edge, by the same written rule that the program is held to. */
  readonly kind: ('drop' | 'bank' | 'rise')[];
}

const STEP_M = 0.25;

export function edgeKey(road: RoadGround, side: -1 | 1): EdgeKey {
  const { spec, trueX, trueY, normalX, normalY, heightAt } = road;
  const count = trueX.length;
  const key = {
    x: new Float64Array(count),
    y: new Float64Array(count),
    offsetM: new Float64Array(count),
    kind: [] as EdgeKey['kind'],
  };
  const shape = side > 0 ? spec.right : spec.left;
  for (let i = 0; i < count; i++) {
    const zAt = (q: number): number => heightAt(trueX[i]! + side * q * normalX[i]!, trueY[i]! + side * q * normalY[i]!);
    let q = shape.width(i) + (shape.soft && shape.turn(i) < -0.5 ? shape.soft.widthM(i) : 0);
    for (let round = 0; round < 12; round++) {
      const bench = repeatedMedian(zAt, q - 5, q - 0.5);
      const slope = repeatedMedian(zAt, q + 0.5, q + 4);
      const met = (slope.z0 - bench.z0 - slope.b * (q + 0.5) + bench.b * (q - 5)) / (bench.b - slope.b);
      const next = (q + met) / 2;
      if (Math.abs(next - q) < 0.005) break;
      q = next;
    }
    key.offsetM[i] = side * q;
    key.kind[i] = kindBeyond(zAt, q);
    key.x[i] = trueX[i]! + side * q * normalX[i]!;
    key.y[i] = trueY[i]! + side * q * normalY[i]!;
  }
  return key;
}

/** A drop falls by 25 % and 2 m, or by 40 % and 1.2 m, from the edge to some point within 20 m of it. */
function kindBeyond(zAt: (q: number) => number, edge: number): 'drop' | 'bank' | 'rise' {
  const foot = zAt(edge);
  // What stands more than a berm's height beside the bench is a rise, whatever the ground does behind it.
  for (let run = 0; run <= 4; run += STEP_M) if (zAt(edge + run) > foot + 0.65) return 'rise';
  for (let run = 2; run <= 20; run += STEP_M) {
    const fall = foot - zAt(edge + run);
    if ((fall >= 2 && fall >= 0.25 * run) || (fall >= 1.2 && fall >= 0.4 * run)) return 'drop';
  }
  return 'bank';
}

/** z = z0 + b·(t − from): median over the samples of the median slope to all others; half of them may be a berm. */
export function repeatedMedian(zAt: (q: number) => number, from: number, to: number): { z0: number; b: number } {
  const t: number[] = [];
  const z: number[] = [];
  for (let q = from; q <= to + 1e-9; q += STEP_M) {
    t.push(q - from);
    z.push(zAt(q));
  }
  const slopes = t.map((ti, i) => median(t.flatMap((tj, j) => (i === j ? [] : [(z[j]! - z[i]!) / (tj - ti)]))));
  const b = median(slopes);
  return { b, z0: median(z.map((h, k) => h - b * t[k]!)) };
}

export function median(values: readonly number[]): number {
  const v = [...values].sort((a, b) => a - b);
  const m = v.length >> 1;
  return v.length === 0 ? Number.NaN : v.length & 1 ? v[m]! : (v[m - 1]! + v[m]!) / 2;
}
