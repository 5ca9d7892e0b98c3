import { describe, expect, it } from 'vitest';
import { KIND } from '../../src/road/index.ts';
import { absoluteErrors, type EdgeCase, edgeCases, shareInBand } from '../helpers/edge-cases.ts';
import { quantile, worstRun } from '../helpers/edge-errors.ts';
import { benchOf } from '../helpers/road-bench.ts';
import { makeRoadGround, type RoadSpec } from '../helpers/road-ground.ts';
import * as specs from '../helpers/road-specs.ts';

/**
 * Edges on made roads whose seeds were held out: no figure of the method was chosen on them. Accuracy is asked of each road
 * and of all together, on the side that drops; a longer table is printed by tests/bench/edges.
 */
const LENGTH_M = 220;
const roads = (make: (seed: number) => RoadSpec, seeds: readonly number[]): EdgeCase[][] =>
  seeds.map((seed) => edgeCases({ ...make(seed), ...(make === specs.hairpinRoad ? {} : { lengthM: LENGTH_M }) }));

const drops = (cases: readonly EdgeCase[], side?: -1 | 1): EdgeCase[] =>
  cases.filter((c) => c.truth === 'drop' && (side === undefined || c.side === side));

function expectAccuracy(
  all: readonly EdgeCase[][],
  pooled: { median: number; p95: number },
  each: { median: number; p95: number; run: number },
): void {
  const errors = all.flatMap((cases) => absoluteErrors(drops(cases)));
  expect(errors.filter(Number.isFinite).length).toBeGreaterThan(150 * all.length);
  expect(quantile(errors, 0.5)).toBeLessThanOrEqual(pooled.median);
  expect(quantile(errors, 0.95)).toBeLessThanOrEqual(pooled.p95);
  for (const cases of all) {
    const own = absoluteErrors(drops(cases));
    expect(quantile(own, 0.5)).toBeLessThanOrEqual(each.median);
    expect(quantile(own, 0.95)).toBeLessThanOrEqual(each.p95);
    for (const side of [-1, 1] as const) {
      expect(worstRun(absoluteErrors(drops(cases, side)))).toBeLessThanOrEqual(each.run);
    }
  }
}

const missed = (all: readonly EdgeCase[][]): number =>
  all.flat().filter((c) => c.defined && c.truth === 'drop' && c.told !== 'drop').length;
const invented = (all: readonly EdgeCase[][]): number =>
  all.flat().filter((c) => c.defined && c.truth !== 'drop' && c.told === 'drop').length;

describe('easy roads', () => {
  const easy = [...roads(specs.plainRoad, [90_001, 90_002, 90_003]), ...roads(specs.throughFill, [90_004, 90_005])];

  it('edges lie within 0.12 m in the median, 0.4 m at 95 %', () => {
    expectAccuracy(easy, { median: 0.12, p95: 0.4 }, { median: 0.25, p95: 0.6, run: 0.6 });
  });

  it('the printed band holds the truth at 85 to 95 of a hundred', () => {
    const share = shareInBand(easy.flatMap((cases) => drops(cases)));
    expect(share).toBeGreaterThanOrEqual(0.85);
    // Five short roads: their share scatters by some hundredths about the long run's.
    expect(share).toBeLessThanOrEqual(0.98);
  });

  it('no drop is missed and none is invented', () => {
    expect([missed(easy), invented(easy)]).toEqual([0, 0]);
  });
});

describe('hard roads with a defined edge', () => {
  const hard = [
    ...roads(specs.roughRoad, [91_001, 91_002, 91_003]),
    ...roads(specs.roundedRoad, [91_004]),
    ...roads(specs.bermRoad, [91_005]),
    ...roads(specs.turnoutRoad, [91_006, 91_007]),
    ...roads(specs.hairpinRoad, [91_008]),
  ];

  it('edges lie within 0.25 m in the median, 0.8 m at 95 %', () => {
    expectAccuracy(hard.slice(0, -1), { median: 0.25, p95: 0.8 }, { median: 0.4, p95: 1.2, run: 1.5 });
    const hairpin = absoluteErrors(drops(hard.at(-1)!));
    expect(quantile(hairpin, 0.5)).toBeLessThanOrEqual(0.4);
    expect(quantile(hairpin, 0.95)).toBeLessThanOrEqual(1.2);
  });

  it('the printed band holds the truth at 85 to 95 of a hundred', () => {
    const share = shareInBand(hard.flatMap((cases) => drops(cases)));
    expect(share).toBeGreaterThanOrEqual(0.85);
    expect(share).toBeLessThanOrEqual(0.96);
  });

  it('no drop is missed and none is invented', () => {
    expect([missed(hard), invented(hard)]).toEqual([0, 0]);
  });
});

describe('where nothing drops', () => {
  it('no drop is told on flat ground or in a cut', () => {
    for (const spec of [...[92_001, 92_002, 92_003].map(specs.flatRoad), specs.cutRoad(92_004)]) {
      const { left, right, count } = benchOf(makeRoadGround({ ...spec, lengthM: LENGTH_M }));
      expect(count).toBeGreaterThan(190);
      for (const side of [left, right]) expect(side.kind.indexOf(KIND.drop)).toBe(-1);
    }
  });
});

describe('misplaced lines and second benches', () => {
  it('a line up to 8 m off, with a level bench below, does not break it', () => {
    const benches = roads(specs.secondBenchRoad, [93_001, 93_002]);
    expectAccuracy(benches, { median: 0.12, p95: 0.4 }, { median: 0.25, p95: 0.6, run: 0.6 });
    expect(missed(benches)).toBe(0);
  });

  it.each([-8, 8])('a line drawn %i m off gives the same edge as one drawn on the road', (off) => {
    const spec = { ...specs.plainRoad(93_003), lengthM: LENGTH_M };
    const on = absoluteErrors(drops(edgeCases({ ...spec, drawnOff: () => 0 })));
    const beside = absoluteErrors(drops(edgeCases({ ...spec, drawnOff: () => off })));
    expect(Math.abs(quantile(on, 0.5) - quantile(beside, 0.5))).toBeLessThan(0.03);
    expect(quantile(beside, 0.95)).toBeLessThan(0.4);
  });
});

it('cells of 2 m still give edges within 0.27 m in the median, 0.65 m at 95 %', () => {
  const coarse = [specs.plainRoad(94_001), specs.roughRoad(94_002)].map((spec) =>
    edgeCases({ ...spec, lengthM: LENGTH_M, cellM: 2 }),
  );
  expectAccuracy(coarse, { median: 0.27, p95: 0.65 }, { median: 0.4, p95: 1.2, run: 1.5 });
  expect(missed(coarse)).toBe(0);
});
