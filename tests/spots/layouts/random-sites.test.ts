import { describe, expect, it } from 'vitest';
import type { Layout } from '../../../src/spots/index.ts';
import { layoutsOf } from '../layout-sites.ts';
import { randomSite, shifts } from '../random-sites.ts';

const SITES = 300;
/** Every so many sites are shifted: each shift is a search of its own. */
const SHIFT_EVERY = 4;
/** How far along the road is sought, metres: no two engines' ropes throw farther. */
const REACH_M = 40;

const first = (...site: Parameters<typeof randomSite>): Layout | undefined =>
  layoutsOf(randomSite(...site), REACH_M).layouts[0];

describe(`${SITES} random roadsides`, () => {
  const found = Array.from({ length: SITES }, (_, seed) => first(seed));

  it('at least 85 % have every factor met, with a median least crew of 15 or fewer', () => {
    const met = found.filter((layout) => layout?.governing.verdict === 'yes').length;
    const crews = found
      .map((layout) => layout?.people.leastRaise.count ?? Number.POSITIVE_INFINITY)
      .sort((a, b) => a - b);
    const none = found.filter((layout) => layout === undefined).length;
    console.log(
      `${met} of ${SITES} with every factor met, ${none} without a layout, median least crew ${crews[SITES / 2]}`,
    );
    expect(met).toBeGreaterThanOrEqual(0.85 * SITES);
    expect(crews[SITES / 2]).toBeLessThanOrEqual(15);
  }, 120_000);

  it('the first choice stays in at least 95 % of shifts of angle, length and bench', () => {
    let trials = 0;
    let changed = 0;
    for (let seed = 0; seed < SITES; seed += SHIFT_EVERY) {
      const before = found[seed];
      for (const shift of shifts) {
        const after = first(seed, shift);
        trials++;
        if (before?.kind !== after?.kind || before?.run.advantage !== after?.run.advantage) changed++;
      }
    }
    console.log(`first choice changed in ${changed} of ${trials} shifts`);
    expect(trials).toBeGreaterThan(400);
    expect(changed).toBeLessThanOrEqual(0.05 * trials);
  }, 120_000);
});
