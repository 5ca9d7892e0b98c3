import { describe, expect, it } from 'vitest';
import { profileSvg } from '../../src/plan/index.ts';
import { studyFixture } from '../helpers/study-fixture.ts';

const size = { width: 860, height: 460 };

/** The x, y pairs of the path with a class. */
function points(svg: string, name: string): number[][] {
  return [...svg.matchAll(new RegExp(`<path class="${name}"[^>]* d="([^"]+)"`, 'g'))].map((match) =>
    [...match[1]!.matchAll(/-?\d+(?:\.\d+)?/g)].map(Number),
  );
}

describe('profileSvg', () => {
  it('draws height and distance at one scale, so that the slope on the page is the slope on the ground', () => {
    const study = studyFixture();
    const [, ground] = points(profileSvg(study, { units: 'us', ...size }), 'ground');
    const { distanceM, elevationM } = study.profile!;
    const last = ground!.length - 2;
    const scaleX = (ground![last]! - ground![0]!) / (distanceM.at(-1)! - distanceM[0]!);
    const scaleY = (ground![last + 1]! - ground![1]!) / (elevationM[0]! - elevationM.at(-1)!);
    expect(scaleX).toBeGreaterThan(3);
    expect(scaleY / scaleX).toBeCloseTo(1, 3);
  });

  it('stays inside its frame for a long drop and for a flat one', () => {
    for (const factor of [8, 0.1]) {
      const base = studyFixture();
      const profile = { ...base.profile!, elevationM: base.profile!.elevationM.map((z) => 1000 + (z - 1000) * factor) };
      const svg = profileSvg(studyFixture({ profile }), { units: 'metric', ...size });
      const [, ground] = points(svg, 'ground');
      for (let i = 0; i < ground!.length; i += 2) {
        expect(ground![i]).toBeGreaterThanOrEqual(0);
        expect(ground![i]).toBeLessThanOrEqual(size.width);
        expect(ground![i + 1]).toBeGreaterThanOrEqual(0);
        expect(ground![i + 1]).toBeLessThanOrEqual(size.height);
      }
    }
  });

  it('draws the rays of the rule at the angles of the rule', () => {
    const svg = profileSvg(studyFixture(), { units: 'us', ...size });
    const angles = points(svg, 'ray').map(([x0, y0, x1, y1]) => (Math.atan2(y1! - y0!, x1! - x0!) * 180) / Math.PI);
    expect(angles.map((a) => Math.round(a * 10) / 10)).toEqual([30, 45]);
  });

  it('carries no style attribute and no script, and makes hostile names inert', () => {
    const svg = profileSvg(studyFixture({ sentence: '<script>alert(1)</script>" onload="x\u202Ey' }), {
      units: 'us',
      ...size,
    });
    expect(svg).not.toMatch(/<script|\sstyle=|" onload="|\u202E/);
    expect(svg).toContain('&lt;script&gt;');
  });

  it('says so where there is no edge to draw', () => {
    const svg = profileSvg(studyFixture({ edge: null, descent: null, profile: null, angle: null }), {
      units: 'us',
      ...size,
    });
    expect(svg).toContain('no drop edge');
  });

  it('marks an undecided class on the ground line', () => {
    const base = studyFixture();
    const svg = profileSvg(studyFixture({ angle: { ...base.angle!, class: 'undecided' } }), { units: 'us', ...size });
    expect(svg).toContain('undecided-line');
    expect(svg).toContain('class undecided, as steep');
  });
});
