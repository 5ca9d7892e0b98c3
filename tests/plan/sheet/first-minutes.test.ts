import { describe, expect, it } from 'vitest';
import { sightWords } from '../../../src/plan/sheet/approach.ts';
import { firstMinutes } from '../../../src/plan/sheet/first-minutes.ts';
import { SIGHT_REACH_M } from '../../../src/road/index.ts';
import type { Study } from '../../../src/study/index.ts';
import { studyWithLayouts } from '../../helpers/study-with-layouts.ts';

/** The sheet's first minutes where drivers see so far from either end, metres, and stop within 110. */
function saidAt(before: number | null, after: number | null): string {
  const study = studyWithLayouts();
  const ends = [
    ['before', before],
    ['after', after],
  ] as const;
  const short = ends.filter(([, sightM]) => sightM === null || sightM < 110).map(([end]) => end);
  const closure: Study['closure'] = {
    ...{ kind: 'road closed', lanesBlocked: 2, taperM: null, advanceSignsM: [], speed: { mph: 35, how: 'typed' } },
    ...{ stoppingSightM: 110, sightM: { before, after }, short },
  };
  return firstMinutes({ ...study, closure }, 'metric').join('\n');
}

const count = (words: string, of: RegExp): number => [...words.matchAll(of)].length;

it('sight that reaches as far as it is looked for is told as at least that', () => {
  expect(sightWords(SIGHT_REACH_M, 'us')).toBe('984 ft or more');
  expect(sightWords(SIGHT_REACH_M - 0.5, 'us')).toBe('982 ft');
  expect(sightWords(null, 'us')).toBe('not known');
});

describe('the blocking vehicles of the first five minutes', () => {
  it('one where one end is short of sight, as far out as the stopping distance exceeds the sight', () => {
    const words = saidAt(60, 200);
    expect(words).toMatch(/Warn traffic from the \w+ first, 110 m out: sight 60 m,/);
    expect(words).toMatch(/Blocking vehicle on the \w+ side, at least 50 m from the descent, where drivers see it/);
    expect(words).not.toContain('another');
  });

  it('one at either end where both are short, the shorter sight first, each with its own distance', () => {
    const words = saidAt(80, 40);
    expect(words).toMatch(/Warn traffic from the (\w+), then from the (?!\1)\w+, 110 m out: sight 40 m and 80 m,/);
    expect(words).toMatch(
      /on the (\w+) side, at least 70 m from the descent; another on the (?!\1)\w+ side, at least 30 m from the descent,/,
    );
  });

  it('at an end where sight is not known the whole stopping distance out', () => {
    expect(saidAt(null, 200)).toMatch(/sight not known.*\n.*at least 110 m from the descent/);
  });

  it('with sight enough no end is named, and both are warned', () => {
    const words = saidAt(150, 200);
    expect(words).toContain('Warn traffic both ways');
    expect(count(words, /Blocking vehicle/g)).toBe(1);
    expect(count(words, / side,/g)).toBe(0);
  });
});

it('without a drop edge none is marked; where nothing was computed it is to be found first', () => {
  const study = studyWithLayouts();
  const level = { ...study, edge: null, angle: null, closure: null, layouts: [], spots: [] };
  const words = firstMinutes(level, 'us').join('\n');
  expect(words).toContain('No drop edge was found on this side: look for one; nobody past one untied.');
  expect(words).toContain('close the lane beside the site');
  expect(words).not.toContain('Mark the edge');
  const structure = firstMinutes({ ...level, bench: null }, 'us').join('\n');
  expect(structure).toContain('The edge was not computed: find and mark it; nobody past it untied.');
  expect(structure).toContain('close the lanes beside the site');
});
