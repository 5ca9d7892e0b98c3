import { quantile, shareFrom } from '../../../src/descent/estimate/draw-angles.ts';

/** One estimated case: ascending draws of the run with the stated error and of the second run, degrees. */
export interface Scored {
  readonly group: string;
  readonly truthDeg: number;
  readonly stated: Float64Array;
  readonly second: Float64Array;
}

/** Shares in per cent, angles in degrees. */
export interface Score {
  readonly count: number;
  readonly bias: number;
  readonly error95: number;
  readonly cover: number;
  readonly above: number;
  readonly width: number;
  /** Planned gentler than the truth, truth 0 to 3° over a limit, mean of both limits. */
  readonly gentlerNear: number;
  /** Planned a class too steep, truth 2, 4, 6° below a limit. */
  readonly steeper: readonly number[];
  /** Class undecided, truth 2, 4, 6° from a limit. */
  readonly undecided: readonly number[];
}

const far = 1000;
const distances = [2, 4, 6] as const;

export function score(rows: readonly Scored[]): Score {
  const errors = rows.map((r) => quantile(r.stated, 0.5) - r.truthDeg);
  const ranges = rows.map((r) => [
    Math.min(quantile(r.stated, 0.05), quantile(r.second, 0.05)),
    Math.max(quantile(r.stated, 0.95), quantile(r.second, 0.95)),
  ]);
  const share = (test: (r: Scored, i: number) => number): number =>
    (100 * rows.reduce((sum, r, i) => sum + test(r, i), 0)) / rows.length;
  return {
    count: rows.length,
    bias: errors.reduce((a, b) => a + b, 0) / rows.length,
    error95: quantile(Float64Array.from(errors, Math.abs).sort(), 0.95),
    cover: share((r, i) => +(r.truthDeg >= ranges[i][0] && r.truthDeg <= ranges[i][1])),
    above: share((r, i) => +(r.truthDeg > ranges[i][1])),
    width: ranges.reduce((sum, [a, b]) => sum + b - a, 0) / rows.length,
    gentlerNear: share((r) => {
      let gentler = 0;
      for (let u = 0; u < 6; u++) {
        const limit = r.truthDeg - (u + 0.5) / 2;
        gentler += +(plan(r, limit, far) === 'low') + +(plan(r, -far, limit) === 'steep');
      }
      return gentler / 12;
    }),
    steeper: distances.map((d) =>
      share((r) => {
        const limit = r.truthDeg + d;
        return (+(plan(r, limit, far) !== 'low') + +(plan(r, -far, limit) === 'high')) / 2;
      }),
    ),
    undecided: distances.map((d) =>
      share((r) => {
        let open = 0;
        for (const limit of [r.truthDeg - d, r.truthDeg + d]) {
          const over = shareFrom(r.stated, limit);
          open += +(1 - over < 0.95 && over < 0.8) + +(1 - over < 0.8 && over < 0.8);
        }
        return open / 4;
      }),
    ),
  };
}

/** The planning rule, written out a second time on purpose. */
function plan(r: Scored, lowMax: number, highMin: number): 'low' | 'steep' | 'high' {
  if (Math.max(shareFrom(r.stated, highMin), shareFrom(r.second, highMin)) > 0.1) return 'high';
  return Math.max(shareFrom(r.stated, lowMax), shareFrom(r.second, lowMax)) <= 0.05 ? 'low' : 'steep';
}

/** Reliability of the shown probabilities under 30/45: bins of a tenth, [count, stated mean, observed share]. */
export function reliability(rows: readonly Scored[]): [number, number, number][] {
  const bins = Array.from({ length: 10 }, () => [0, 0, 0] as [number, number, number]);
  for (const r of rows) {
    for (const [from, to] of [
      [-far, 30],
      [30, 45],
      [45, far],
    ] as const) {
      const p = shareFrom(r.stated, from) - shareFrom(r.stated, to);
      const bin = bins[Math.min(9, Math.floor(p * 10))];
      bin[0]++;
      bin[1] += p;
      bin[2] += +(r.truthDeg >= from && r.truthDeg < to);
    }
  }
  return bins.map(([n, p, o]) => [n, n ? p / n : 0, n ? o / n : 0]);
}

export function row(name: string, s: Score): string {
  const f = (v: number, d = 2): string => v.toFixed(d).padStart(6);
  return `${name.padEnd(12)} ${String(s.count).padStart(5)} bias ${f(s.bias)} e95 ${f(s.error95)} cover ${f(s.cover, 1)} above ${f(s.above, 1)} width ${f(s.width)} gentler ${f(s.gentlerNear)} steeper ${s.steeper.map((v) => f(v, 1)).join('')} undecided ${s.undecided.map((v) => f(v, 1)).join('')}`;
}
