import { describe, expect, it } from 'vitest';
import { findLayouts, type Layout, type Layouts, type Spot } from '../../../src/spots/index.ts';
import { questionOf } from '../layout-sites.ts';
import { randomSite, type Shift, shifts } from '../random-sites.ts';

const SITES = 300;
/** Every so many sites are shifted: each shift is a search of its own. */
const SHIFT_EVERY = 6;
/** How far along the road is sought, metres: no two engines' ropes throw farther. */
const REACH_M = 40;

/** The layouts of a site, over its spots where they are known. */
const first = (seed: number, shift?: Shift, spots?: readonly Spot[]): Layouts =>
  findLayouts({ ...questionOf(randomSite(seed, shift), REACH_M), ...(spots && { spots }) });

describe(`${SITES} random roadsides`, () => {
  const all = Array.from({ length: SITES }, (_, seed) => first(seed));
  const found = all.map(({ layouts }): Layout | undefined => layouts[0]);

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
        // Slope and length move no spot.
        const spots = shift.benchM === undefined ? all[seed]!.spots : undefined;
        const [after] = first(seed, shift, spots).layouts;
        trials++;
        if (before?.kind !== after?.kind || before?.run.advantage !== after?.run.advantage) changed++;
      }
    }
    console.log(`first choice changed in ${changed} of ${trials} shifts`);
    expect(trials).toBeGreaterThanOrEqual(300);
    expect(changed).toBeLessThanOrEqual(0.05 * trials);
  }, 120_000);
});
