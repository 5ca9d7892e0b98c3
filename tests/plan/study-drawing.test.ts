import { describe, expect, it } from 'vitest';
import { studySvg } from '../../src/plan/index.ts';
import { palettes } from '../../src/plan/palette.ts';
import { STOP_LINE } from '../../src/study/index.ts';
import { studyWithLayouts } from '../helpers/study-with-layouts.ts';
import { coordinates, elementsOf, ofClass, readSvg } from '../helpers/svg-reading.ts';

const draw = (study = studyWithLayouts(), options = {}) => readSvg(studySvg(study, { units: 'us', ...options }));
const wordsOf = (root: ReturnType<typeof draw>) =>
  elementsOf(root, 'text')
    .map(({ textContent }) => textContent)
    .join(' ');

describe('studySvg', () => {
  it('puts plan view and profile at one scale on one x axis', () => {
    const root = draw();
    const study = studyWithLayouts();
    const [x0, , x1] = coordinates(ofClass(root, 'path', 'descent')[0]!);
    const ground = coordinates(ofClass(root, 'path', 'ground').at(-1)!);
    expect(ground[0]).toBeCloseTo(x0!, 1);
    expect(ground.at(-2)).toBeCloseTo(x1!, 1);
    const { elevationM, distanceM } = study.profile!;
    const across = (ground.at(-2)! - ground[0]!) / distanceM.at(-1)!;
    const down = (ground.at(-1)! - ground[1]!) / (elevationM[0]! - elevationM.at(-1)!);
    expect(down / across).toBeCloseTo(1, 2);
  });

  it('compares fields and raises at one scale, cut where the resets fall', () => {
    const root = draw();
    const [x0, , x1] = coordinates(ofClass(root, 'path', 'descent')[0]!);
    const scale = (x1! - x0!) / 45;
    // The first field ruler lies on the plan; the compared ones follow, turned first.
    const fields = ofClass(root, 'rect', 'haul-field').map((field) => Number(field.getAttribute('width')) / scale);
    expect(fields.map((metres) => Math.round(metres * 10) / 10)).toEqual([24, 24, 6]);
    const bars = ofClass(root, 'path', 'pull-bar').map(coordinates);
    for (const [from, , to] of bars) expect((to! - from!) / scale / 52).toBeCloseTo(1, 2);
    const ticks = ofClass(root, 'path', 'reset-tick').map((path) =>
      [...path.getAttribute('d')!.matchAll(/M(\S+) /g)].map((match) => (Number(match[1]) - bars[0]![0]!) / scale),
    );
    expect(ticks.map((list) => list.length)).toEqual([2, 15]);
    // Each pull gains the throw of 21.5 m less 0.25 m, the first takes in 3 % of 60 m of rope.
    expect(ticks[0]![0]).toBeCloseTo(21.25 - 1.8, 1);
    expect(ticks[0]![1]).toBeCloseTo(2 * 21.25 - 1.8, 1);
    expect(ticks[1]![0]).toBeCloseTo(52 / 16, 1);
  });

  it('measures the road bench over the profile to scale', () => {
    const root = draw();
    const [x0, , x1] = coordinates(ofClass(root, 'path', 'descent')[0]!);
    const [from, , to] = coordinates(ofClass(root, 'path', 'bench-width')[0]!);
    expect((to! - from!) / ((x1! - x0!) / 45) / 9).toBeCloseTo(1, 2);
  });

  it('carries sentence, caution, source and what to check', () => {
    const warnings = [
      { code: 'x', severity: 'check' as const, text: 'Look up before anybody stands there.' },
      { code: 'y', severity: 'note' as const, text: 'Only a note.' },
    ];
    const words = wordsOf(draw(studyWithLayouts({ warnings })));
    expect(words).toContain('Plan as steep:');
    expect(words).toContain('Verify on site.');
    expect(words).toContain('elevation-1m.tif');
    expect(words).toContain('vertical RMSE 2 in');
    expect(words).toContain('Not checked on the ground.');
    expect(words).toContain('Look up before anybody stands there.');
    expect(words).not.toContain('Only a note.');
    expect(words).not.toMatch(/\b(safe|adequate|approved)\b/i);
  });

  it('puts the stop line of a high place first, without minutes or team size', () => {
    const base = studyWithLayouts();
    const sentence = `${STOP_LINE} Plan as high: 52°, 50 to 55 (rule 30/45).`;
    const root = draw({ ...base, sentence, angle: { ...base.angle!, class: 'high', planAs: 'high' } });
    const texts = elementsOf(root, 'text').map(({ textContent }) => textContent ?? '');
    const stop = texts.findIndex((words) => words.startsWith('Technical rope team needed.'));
    const plan = texts.findIndex((words) => words.startsWith('Plan as high:'));
    expect(stop).toBeGreaterThanOrEqual(0);
    expect(plan).toBeGreaterThan(stop);
    expect(ofClass(root, 'rect', 'stop-bar')).toHaveLength(1);
    expect(texts.join(' ')).toContain('For the technical team');
    expect(texts.join(' ')).not.toMatch(/hauler|\d+ (min|people)\b/);
  });

  it('holds every line at its width inside the drawing, whatever faces a device has', () => {
    const study = studyWithLayouts();
    const high = { ...study, sentence: `${STOP_LINE} ${study.sentence}` };
    for (const width of [640, 960]) {
      const root = draw(high, { width });
      const view = Number(root.getAttribute('viewBox')!.split(' ')[2]);
      const texts = elementsOf(root, 'text');
      const free = texts.filter(
        (each) => !each.getAttribute('textLength') && /^[ -~°’′·]+$/u.test(each.textContent ?? ''),
      );
      expect(free.map(({ textContent }) => textContent).filter((words) => words!.trim() !== '')).toEqual([]);
      const ends = texts
        .filter((each) => !each.getAttribute('text-anchor') && !each.getAttribute('transform'))
        .map((each) => Number(each.getAttribute('x')) + Number(each.getAttribute('textLength')));
      expect(ends.length).toBeGreaterThan(10);
      expect(Math.max(...ends)).toBeLessThan(view - 10);
    }
  });

  it('says in place why a kind of haul is missing, and why there is no drawing at all', () => {
    const base = studyWithLayouts();
    const warnings = [
      { code: 'no-straight-haul', severity: 'note' as const, text: 'No straight haul: too near the edge.' },
    ];
    expect(wordsOf(draw({ ...base, layouts: base.layouts.slice(0, 1), warnings }))).toContain('too near the edge.');
    const flat = { edge: null, descent: null, profile: null, angle: null, layouts: [], sentence: 'No drop edge here.' };
    expect(wordsOf(draw(studyWithLayouts(flat)))).toContain('No drop edge here.');
    expect(wordsOf(draw(studyWithLayouts({ ...flat, bench: null })))).toContain('Verify on site.');
  });

  it('makes hostile names inert', () => {
    const bad = '"><script>alert(1)</script><img src=x onerror=y>\u202E&\u0000';
    const base = studyWithLayouts();
    const svg = studySvg(
      {
        ...base,
        sentence: bad,
        site: { ...base.site, sideWords: bad, road: { id: bad, name: bad, stationM: 0 } },
        spots: base.spots.map((spot) => ({ ...spot, apparatus: bad })),
        marks: base.marks.map((mark) => ({ ...mark, name: bad })),
        terrain: { ...base.terrain, source: bad },
        warnings: [{ code: bad, severity: 'stop', text: bad }],
        check: { by: bad, role: bad, on: bad, method: 'walked', conditions: bad, dueOn: bad, due: true },
      },
      { units: 'metric' },
    );
    const names = new Set(elementsOf(readSvg(svg), '*').map(({ tagName }) => tagName));
    expect([...names].sort()).toEqual(['circle', 'g', 'path', 'rect', 'svg', 'text']);
    expect(svg).not.toContain('\u0000');
    expect(svg).not.toMatch(/<script|<img|\son[a-z]+="|\u202E|\sstyle=/);
  });

  it('holds no pattern, no text under 10 and no number that is none, by day, by night and in black', () => {
    for (const palette of ['light', 'night', 'black'] as const) {
      for (const width of [640, 960, 1400]) {
        const svg = studySvg(studyWithLayouts(), { units: 'metric', palette, width });
        expect(svg).not.toMatch(/<pattern|NaN|Infinity|undefined|null/);
        for (const each of elementsOf(readSvg(svg), 'text')) {
          expect(Number(each.getAttribute('font-size'))).toBeGreaterThanOrEqual(10);
        }
      }
    }
    const inks = new Set(
      [...studySvg(studyWithLayouts(), { units: 'us', palette: 'black' }).matchAll(/#[0-9a-f]{6}/g)].map(String),
    );
    expect([...inks].sort()).toEqual(['#000000', '#777777', '#ffffff']);
  });

  it('keeps every ink that letters are written in at 4.5 to 1 or more against its paper', () => {
    for (const { paper, ink, ink2, accent, water, assumed } of Object.values(palettes)) {
      for (const letters of [ink, ink2, accent, water, assumed]) {
        const [a, b] = [luminance(letters), luminance(paper)];
        expect((Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05)).toBeGreaterThanOrEqual(4.5);
      }
    }
  });
});

/** Relative luminance of #rrggbb [source: wcag22, relative luminance], recalled. */
function luminance(colour: string): number {
  const [r, g, b] = [1, 3, 5].map((at) => {
    const share = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}
