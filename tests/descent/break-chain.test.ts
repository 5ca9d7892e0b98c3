import { describe, expect, it } from 'vitest';
import { breakChain } from '../../src/descent/estimate/break-chain.ts';
import { modelTables } from '../../src/descent/estimate/model-tables.ts';
import { errorChain } from '../../src/descent/estimate/roughness-levels.ts';
import { slopeModel } from '../../src/descent/index.ts';
import { seededRandom } from '../../src/units/index.ts';

const knots = { count: 12, knotM: 1, windowM: 5 };
const sigmaM = 0.1;
const model = {
  ...slopeModel,
  breakSlots: 1,
  slotsPerSweep: 1,
  roughness: [{ kind: 'none', weight: 1 }],
  errors: [{ variance: 1.15, lagOne: 0.7, weight: 1 }],
} as const;

/** Log density of heights under one break (or none), slopes integrated out, by the full covariance of the heights. */
function logDensity(fall: Float64Array, at: number | null): number {
  const n = fall.length;
  const { variance, lagOne } = errorChain(model.errors[0], knots, sigmaM);
  const a = Array.from({ length: n }, (_, i) =>
    Array.from({ length: n }, (_, j) => {
      const ramps = at === null ? 0 : Math.max(0, i - at) * Math.max(0, j - at) * model.breakTan ** 2;
      return variance * lagOne ** Math.abs(i - j) + 100 ** 2 + i * j * model.firstTan[1] ** 2 + ramps;
    }),
  );
  const x = fall.slice();
  let log = 0;
  for (let i = 0; i < n; i++) {
    log -= 0.5 * (Math.log(a[i][i]) + (x[i] * x[i]) / a[i][i]);
    for (let r = i + 1; r < n; r++) {
      const f = a[r][i] / a[i][i];
      for (let k = i; k < n; k++) a[r][k] -= f * a[i][k];
      x[r] -= f * x[i];
    }
  }
  return log;
}

describe('break chain', () => {
  it('visits breaks as often as Bayes’ rule by full covariances says', () => {
    const random = seededRandom(8);
    const fall = Float64Array.from({ length: 12 }, (_, k) => 0.12 * Math.max(0, k - 5) + 0.08 * random.normal());
    const tables = modelTables(model, knots, [{ sigmaM, weight: 1 }]);
    const chain = breakChain(model, tables, fall, random);
    const visits = new Float64Array(11);
    const sweeps = 60_000;
    for (let i = 0; i < sweeps; i++) {
      chain.sweep();
      visits[chain.state.slots[0] + 1]++;
    }
    const log = Array.from({ length: 11 }, (_, i) => logDensity(fall, i === 0 ? null : i));
    const most = Math.max(...log);
    const weight = log.map((l, i) => Math.exp(l - most) * (i === 0 ? 1 - model.breakChance : model.breakChance / 10));
    const total = weight.reduce((a, b) => a + b);
    for (let i = 0; i < 11; i++) {
      const p = weight[i] / total;
      // independent draws from 11 weights: four standard errors
      expect(Math.abs(visits[i] / sweeps - p)).toBeLessThan(4 * Math.sqrt((p * (1 - p)) / sweeps) + 1e-4);
    }
  });
});
