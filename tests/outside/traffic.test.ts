import { describe, expect, it } from 'vitest';
import { readRoadTags } from '../../src/road/index.ts';
import {
  closure,
  mergingTaperM,
  oneLaneTaperM,
  postedSpeed,
  shoulderTaperM,
  signSpacingM,
  stoppingSightLevelM,
  stoppingSightM,
} from '../../src/spots/index.ts';
import { FOOT_M, toDegrees } from '../../src/units/index.ts';

const feet = (metres: number): number => metres / FOOT_M;

describe('closure lengths [source: mutcd-2003]', () => {
  // Table 6H-4 for a lane of 12 ft, printed to the next 5 ft.
  it.each([
    [25, 125],
    [35, 245],
    [40, 320],
    [45, 540],
    [55, 660],
  ])('merging taper at %i mph: %i ft', (mph, ft) => {
    expect(feet(mergingTaperM(mph, 12 * FOOT_M))).toBeCloseTo(ft, 6);
    expect(feet(shoulderTaperM(mph, 12 * FOOT_M))).toBeCloseTo(ft / 3, 6);
  });

  it('rounds speeds between 40 and 45 mph up to 45', () => {
    expect(mergingTaperM(41, 3)).toBe(mergingTaperM(45, 3));
    expect(mergingTaperM(40.001, 3)).toBe(mergingTaperM(45, 3));
  });

  it('taper of one lane in turn: 50 to 100 ft (6C.08)', () => {
    expect(oneLaneTaperM.map(feet)).toEqual([50, 100]);
  });

  it.each([
    ['rural', 500],
    ['urban low', 100],
    ['urban high', 350],
  ] as const)('signs on a road "%s": %i ft apart (table 6H-3)', (road, ft) => {
    for (const spacing of signSpacingM(road)) expect(feet(spacing)).toBeCloseTo(ft, 9);
  });
});

// Formula read, table recalled.
describe('stopping sight distance [source: txdot-roadway]', () => {
  it.each([
    [25, 155],
    [35, 250],
    [45, 360],
    [55, 495],
    [60, 570],
  ])('on the level at %i mph: %i ft', (mph, ft) => {
    expect(feet(stoppingSightLevelM(mph))).toBeCloseTo(ft, 6);
  });

  it.each([
    [25, 164.3],
    [45, 399.9],
  ])('6 %% downhill at %i mph: %f ft', (mph, ft) => {
    expect(feet(stoppingSightM(mph, -toDegrees(Math.atan(0.06))))).toBeCloseTo(ft, 1);
  });
});

describe('a whole closure', () => {
  const seen = { before: { distanceM: 200, ends: 'limit' }, after: { distanceM: 60, ends: 'blocked' } } as const;
  const twoLanes = readRoadTags({ highway: 'secondary', maxspeed: '35 mph' });

  it('takes the posted speed to 5 mph up, and 55 mph where there is none', () => {
    expect(postedSpeed(twoLanes)).toEqual({ mph: 35, how: 'typed' });
    expect(postedSpeed(readRoadTags({ maxspeed: '80' })).mph).toBe(50);
    expect(postedSpeed(readRoadTags({ highway: 'secondary' }))).toEqual({ mph: 55, how: 'assumed' });
  });

  it('tells lane in turn, road closed, lane merged and shoulder apart', () => {
    const kind = (tags: Record<string, string>, blocked: number) =>
      closure(readRoadTags(tags), blocked, 0, null, 2).kind;
    expect(kind({ lanes: '2' }, 1)).toBe('one lane in turn');
    expect(kind({ lanes: '2' }, 2)).toBe('road closed');
    expect(kind({ lanes: '2' }, 0)).toBe('shoulder');
    expect(kind({ lanes: '2', oneway: 'yes' }, 1)).toBe('lane merged');
    expect(kind({ lanes: '4' }, 1)).toBe('lane merged');
    expect(kind({ lanes: '4' }, 2)).toBe('one lane in turn');
  });

  it('names the approach that sees less than stopping takes, the one downhill needing more', () => {
    const level = closure(twoLanes, 1, 0, seen, 2);
    expect(feet(level.stoppingSightM)).toBeCloseTo(250, 6);
    expect(level.short).toEqual(['after']);
    const climbing = closure(twoLanes, 1, 4, seen, 2);
    expect(climbing.stoppingSight.after).toBeGreaterThan(climbing.stoppingSight.before);
    expect(climbing.stoppingSight.before).toBeCloseTo(level.stoppingSightM, 9);
  });

  it('counts an approach whose sight nobody measured as short, and an unknown grade as downhill both ways', () => {
    expect(closure(twoLanes, 1, 0, null, 2).short).toEqual(['before', 'after']);
    const unknown = closure(twoLanes, 1, null, seen, 2).stoppingSight;
    expect(unknown.before).toBe(unknown.after);
    expect(unknown.before).toBeGreaterThan(closure(twoLanes, 1, 0, seen, 2).stoppingSightM);
  });

  it('never shortens anything as the speed grows', () => {
    for (let mph = 10; mph < 75; mph++) {
      expect(mergingTaperM(mph + 1, 3.6)).toBeGreaterThanOrEqual(mergingTaperM(mph, 3.6));
      expect(stoppingSightLevelM(mph + 1)).toBeGreaterThanOrEqual(stoppingSightLevelM(mph));
    }
  });
});
