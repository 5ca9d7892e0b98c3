import { describe, expect, it } from 'vitest';
import { defaultKits, defaultRates, type Kit } from '../../../src/book/index.ts';
import { type Conditions, fairConditions, type HaulArrangement, haul } from '../../../src/rigging/index.ts';
import { compareRank, findLayouts, haulGround, type Layout, type Layouts } from '../../../src/spots/index.ts';
import { seededRandom } from '../../../src/units/index.ts';
import { madeDescent } from '../../helpers/made-descent.ts';
import { layoutsOf, type MadeSite, questionOf, SITE_M } from '../layout-sites.ts';
import { randomSite } from '../random-sites.ts';

const REACH_M = 30;
const fewest = ({ layouts }: Layouts, kind: Layout['kind']): number =>
  Math.min(...layouts.filter((one) => one.kind === kind).map(({ haul: { resets } }) => resets));

describe('more room', () => {
  const widths = [6.4, 7, 7.5, 8, 9, 10, 11, 12, 14, 16];
  const slopes = [
    [25, 20],
    [33, 30],
    [36, 45],
  ] as const;
  const site = (shoulderM: number, halfM: number, [angleDeg, groundM]: readonly [number, number]): MadeSite => ({
    bench: {
      left: { kind: 'rise', widthM: () => 3.2, slope: 1 },
      right: { kind: 'drop', widthM: (s) => (Math.abs(s - SITE_M) <= halfM ? shoulderM : 3.2), slope: -0.6 },
    },
    slope: { angleDeg, groundM },
  });

  it.each(slopes)('never raises the fewest resets of a kind: a wider road, %d° over %d m', (...slope) => {
    const found = widths.map((m) => layoutsOf(site(m - 3.2, 500, slope), 40));
    for (const kind of ['straight', 'turned'] as const) {
      const resets = found.map((one) => fewest(one, kind));
      expect(resets).toEqual([...resets].sort((a, b) => b - a));
    }
  });

  it.each(slopes)('never raises the fewest resets of a kind: a longer turnout, %d° over %d m', (...slope) => {
    const found = [4, 8, 12, 16, 20, 26, 34].map((halfM) => layoutsOf(site(8.2, halfM, slope), 40));
    for (const kind of ['straight', 'turned'] as const) {
      const resets = found.map((one) => fewest(one, kind));
      expect(resets).toEqual([...resets].sort((a, b) => b - a));
    }
  });
});

describe('a steeper slope', () => {
  it('lowers none of the three tensions, from 15° to 70°', () => {
    for (const toEdgeM of [2.5, 4, 8]) {
      let before = { walking: 0, hanging: 0, held: 0, belay: 0 };
      for (let angleDeg = 15; angleDeg <= 70; angleDeg += 0.5) {
        const descent = madeDescent({ x: 0, y: 0, dx: 0, dy: -1, angleDeg, groundM: 30 });
        const { haulGround: ground } = haulGround(descent, toEdgeM, [], defaultRates)!;
        const run: HaulArrangement = {
          kind: 'turned',
          system: 'separate haul line',
          advantage: '3:1',
          ...{ edgeToTurnM: toEdgeM, fieldM: 20, belayRunM: toEdgeM + 3 },
          ...{ handTurns: 0, walkingRoomM: 30, throwRopeM: null },
        };
        const { tensionKn } = haul(ground, run, fairConditions, defaultRates);
        for (const name of ['walking', 'hanging', 'held', 'belay'] as const) {
          expect([name, angleDeg, tensionKn[name] >= before[name] - 1e-9]).toEqual([name, angleDeg, true]);
        }
        before = tensionKn;
      }
    }
  });
});

describe('a shorter rope', () => {
  const cut = (kits: readonly Kit[], by: number): Kit[] =>
    kits.map((kit) => ({ ...kit, ropes: kit.ropes.map((rope) => ({ ...rope, lengthM: rope.lengthM - by })) }));

  it('never fits better, nor ranks a first layout before what the longer one allows', () => {
    for (let seed = 0; seed < 25; seed++) {
      const question = questionOf(randomSite(seed), REACH_M);
      const of = (by: number): Layout | undefined =>
        findLayouts({ ...question, kits: cut(defaultKits, by) }).layouts[0];
      let longer = of(0);
      for (const by of [6, 15, 30, 45]) {
        const shorter = of(by);
        if (longer && shorter) {
          expect([seed, by, shorter.key.kit >= longer.key.kit || !longer.key.practical]).toEqual([seed, by, true]);
          // A shorter throw may spare the team a new grip: that is minutes, the last step but one.
          const { order, step } = compareRank(shorter.key, longer.key);
          expect([seed, by, order >= 0 || step === 'minutes']).toEqual([seed, by, true]);
        }
        if (!longer) expect(shorter).toBeUndefined();
        longer = shorter;
      }
    }
  }, 120_000);
});

describe('worse conditions', () => {
  const worse: (keyof Conditions)[] = ['wet', 'ice', 'night', 'wind', 'looseGround'];

  it('never improve the first layout on any step of the rank that decides, nor its minutes', () => {
    for (let seed = 0; seed < 60; seed++) {
      const random = seededRandom(seed);
      const site = { ...randomSite(seed), conditions: fairConditions };
      const added = worse.filter(() => random.next() < 0.5);
      const conditions = { ...fairConditions, ...Object.fromEntries(added.map((name) => [name, true])) };
      const [fair] = layoutsOf(site, REACH_M).layouts;
      const [foul] = layoutsOf({ ...site, conditions }, REACH_M).layouts;
      if (!fair) expect([seed, added, foul === undefined]).toEqual([seed, added, true]);
      if (fair && foul) expect([seed, added, compareRank(foul.key, fair.key).order >= 0]).toEqual([seed, added, true]);
    }
  }, 120_000);

  it('on ice no apparatus is an anchor: nothing is laid out, and the reason is said', () => {
    const site = { ...randomSite(3), conditions: { ...fairConditions, ice: true } };
    expect(layoutsOf({ ...site, conditions: fairConditions }, REACH_M).layouts.length).toBeGreaterThan(0);
    const { layouts, noStraight, noTurned } = layoutsOf(site, REACH_M);
    expect(layouts).toEqual([]);
    expect([noStraight, noTurned].every((why) => why?.includes('nothing can be an anchor'))).toBe(true);
  });
});
