import type { AngleRule } from '../../../src/book/index.ts';
import { classShares, namedClass, planAs } from '../../../src/descent/index.ts';
import type { Estimated } from './estimate.ts';

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

/** A limit that no slope reaches, and one that every slope passes, degrees. */
const NEVER = 1000;
const ALWAYS = -1000;
const distances = [2, 4, 6] as const;
const noCaution = { step: false, screeningOnly: false };

/**
 * Scores estimated cases. Limits are laid at set distances from each case's truth, once as the limit of low and once as that
 * of high, so that every case counts for every question.
 */
export function score(rows: readonly Estimated[]): Score {
  const errors = rows.map((r) => r.angle.medianDeg - r.truthDeg);
  const share = (test: (r: Estimated) => number): number =>
    (100 * rows.reduce((sum, r) => sum + test(r), 0)) / rows.length;
  return {
    count: rows.length,
    bias: errors.reduce((a, b) => a + b, 0) / rows.length,
    error95: errors.map(Math.abs).sort((a, b) => a - b)[Math.floor(0.95 * rows.length)],
    cover: share((r) => +(r.truthDeg >= r.angle.rangeDeg[0] && r.truthDeg <= r.angle.rangeDeg[1])),
    above: share((r) => +(r.truthDeg > r.angle.rangeDeg[1])),
    width: rows.reduce((sum, r) => sum + r.angle.rangeDeg[1] - r.angle.rangeDeg[0], 0) / rows.length,
    gentlerNear: share((r) => {
      let gentler = 0;
      for (let over = 0.25; over < 3; over += 0.5) {
        const limit = r.truthDeg - over;
        gentler += +(plan(r, limit, NEVER) === 'low') + +(plan(r, ALWAYS, limit) === 'steep');
      }
      return gentler / 12;
    }),
    steeper: distances.map((d) =>
      share((r) => {
        const limit = r.truthDeg + d;
        return (+(plan(r, limit, NEVER) !== 'low') + +(plan(r, ALWAYS, limit) === 'high')) / 2;
      }),
    ),
    undecided: distances.map((d) =>
      share((r) => {
        let open = 0;
        for (const limit of [r.truthDeg - d, r.truthDeg + d]) {
          open += +(named(r, limit, NEVER) === 'undecided') + +(named(r, ALWAYS, limit) === 'undecided');
        }
        return open / 4;
      }),
    ),
  };
}

const ruleOf = (lowMaxDeg: number, highMinDeg: number): AngleRule => ({
  name: 'laid out',
  lowMaxDeg,
  highMinDeg,
  source: 'practice',
});

const named = ({ angle }: Estimated, lowMax: number, highMin: number) =>
  namedClass(classShares(angle.chanceFrom, ruleOf(lowMax, highMin)), false);

const plan = (r: Estimated, lowMax: number, highMin: number) =>
  planAs(r.angle.mostChanceFrom, ruleOf(lowMax, highMin), named(r, lowMax, highMin), noCaution);

/** Reliability of the shown probabilities under a rule: bins of a tenth, [count, stated mean, observed share]. */
export function reliability(rows: readonly Estimated[], rule: AngleRule): [number, number, number][] {
  const bins = Array.from({ length: 10 }, () => [0, 0, 0] as [number, number, number]);
  for (const { angle, truthDeg } of rows) {
    const shares = classShares(angle.chanceFrom, rule);
    const truth = classShares((limit) => +(truthDeg >= limit), rule);
    for (const name of ['low', 'steep', 'high'] as const) {
      const bin = bins[Math.min(9, Math.floor(shares[name] * 10))];
      bin[0]++;
      bin[1] += shares[name];
      bin[2] += truth[name];
    }
  }
  return bins.map(([n, p, o]) => [n, n ? p / n : 0, n ? o / n : 0]);
}

/** One line of a table: bias, 95 % of the error, range, planning and undecided shares. */
export function scoreLine(name: string, s: Score): string {
  const f = (v: number, d = 2): string => v.toFixed(d).padStart(6);
  const list = (values: readonly number[]): string => values.map((v) => f(v, 1)).join('');
  return [
    name.padEnd(12),
    String(s.count).padStart(5),
    `bias ${f(s.bias)}°  95 % ${f(s.error95)}°  holds ${f(s.cover, 1)} %  above ${f(s.above, 1)} %  wide ${f(s.width)}°`,
    `gentler 0–3° ${f(s.gentlerNear)} %  steeper 2/4/6° ${list(s.steeper)} %  undecided ${list(s.undecided)} %`,
  ].join('  ');
}
