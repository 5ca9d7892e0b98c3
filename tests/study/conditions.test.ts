import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Conditions, fairConditions } from '../../src/rigging/index.ts';
import { completeStudy, type Study } from '../../src/study/index.ts';
import { demoDistrict } from '../helpers/demo-district.ts';

/** Sites of the demo of clearly different character: steep over water, low with room, a track, high, too narrow. */
const siteIds = ['kettle-bend', 'split-oak', 'gravel-fan', 'barrier-reach', 'third-culvert'];
const worse = (['wet', 'ice', 'night', 'wind'] as const).map(
  (name): Conditions => ({ ...fairConditions, [name]: true }),
);

/** The head of the rank of the first layout, smaller is better: factors, practical, rope by tier, crew by the first alarm. */
function rankHead({ layouts, arriving }: Study): number[] {
  const [first] = layouts;
  if (!first) return [9];
  const checks = first.forces.filter(({ kind }) => kind !== 'grab' && kind !== 'part');
  const verdict = checks.some(({ ok }) => ok === 'no') ? 2 : checks.some(({ ok }) => ok !== 'yes') ? 1 : 0;
  const { firstAlarm, mutualAid } = first.fits;
  const rope = firstAlarm === 'yes' ? 0 : mutualAid === 'yes' ? 1 : 2;
  const alarm = arriving.filter(({ tier }) => tier !== 'mutual aid').reduce((sum, { people }) => sum + people, 0);
  return [verdict, first.resets > 10 ? 1 : 0, rope, first.people.leastRaise.count > alarm ? 1 : 0];
}

const compare = (a: readonly number[], b: readonly number[]): number => {
  const i = a.findIndex((value, k) => value !== b[k]);
  return i < 0 ? 0 : a[i] - (b[i] ?? 0);
};

describe('worse conditions at the demo district’s sites', () => {
  let studies: { id: string; fair: Study; worse: Study[] }[] = [];

  beforeAll(async () => {
    const district = await demoDistrict();
    studies = [];
    for (const id of siteIds) {
      const site = district.site(id);
      const work = await district.ground(site);
      const of = (conditions: Conditions): Study =>
        completeStudy(work, { ...district.request(site), ground: work.ground, conditions });
      studies.push({ id, fair: of(fairConditions), worse: worse.map(of) });
    }
    await district.close();
  }, 120_000);

  afterAll(() => {
    studies = [];
  });

  it('never lift the first layout in the rank', () => {
    for (const { id, fair, worse: others } of studies) {
      for (const other of others) {
        const given = JSON.stringify(other.given.conditions);
        expect(compare(rankHead(other), rankHead(fair)), `${id} ${given}`).toBeGreaterThanOrEqual(0);
      }
    }
  });

  it('never lower a tension, a haul team or a time of the same layout', () => {
    let same = 0;
    for (const { fair, worse: others } of studies) {
      for (const layout of others.flatMap(({ layouts }) => layouts)) {
        const before = fair.layouts.find(({ id }) => id === layout.id);
        if (!before) continue;
        same++;
        for (const name of ['walking', 'hanging', 'held', 'belay'] as const) {
          expect(layout.tensionKn[name]).toBeGreaterThanOrEqual(before.tensionKn[name]);
        }
        expect(layout.team.walking).toBeGreaterThanOrEqual(before.team.walking);
        const most = Number.POSITIVE_INFINITY;
        expect(layout.minutes.from ?? most).toBeGreaterThanOrEqual(before.minutes.from ?? most);
      }
    }
    expect(same).toBeGreaterThan(10);
  });

  it('leave the ground and the angle class as they are, and say what they are', () => {
    for (const { fair, worse: others } of studies) {
      for (const other of others) {
        expect(other.angle).toEqual(fair.angle);
        if (other.angle!.planAs !== 'high') expect(other.sentence).toContain('Worked out for');
      }
    }
  });

  it('change the result: on ice no apparatus is an anchor', () => {
    for (const { worse: others } of studies) {
      const ice = others.find(({ given }) => given.conditions.ice)!;
      for (const { forces } of ice.layouts) {
        for (const check of forces.filter(({ kind, ok }) => kind === 'hold' && ok !== 'judge on site')) {
          expect(check.ok).toBe('no');
        }
      }
    }
  });
});
