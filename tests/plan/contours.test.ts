import { describe, expect, it } from 'vitest';
import { planPageSvg, planViewSvg, studySvg } from '../../src/plan/index.ts';
import { type HeightGrid, isoLines } from '../../src/plan/iso-lines.ts';
import { completeStudy, type StudyRelief } from '../../src/study/index.ts';
import { heightAt } from '../../src/terrain/index.ts';
import { demoDistrict } from '../helpers/demo-district.ts';
import { planSheetOf } from '../helpers/plan-sheet.ts';
import { studyWithLayouts } from '../helpers/study-with-layouts.ts';
import { coordinates, elementsOf, ofClass, readSvg } from '../helpers/svg-reading.ts';

const grid = (columns: number, rows: number, height: (x: number, y: number) => number) => ({
  columns,
  rows,
  heights: Float64Array.from({ length: columns * rows }, (_, i) => height(i % columns, Math.floor(i / columns))),
});

/** The lines at one height: the first multiple of an interval as large. */
const linesAt = (of: HeightGrid, level: number): number[][] =>
  isoLines(of, level).find(({ step }) => step === 1)?.lines ?? [];

describe('lines of one height through a grid', () => {
  it('lie on the height, all of it, and stay whole', () => {
    const plane = grid(9, 6, (x, y) => 3 * x + y);
    const [line, ...more] = linesAt(plane, 11.5);
    expect(more).toEqual([]);
    for (let i = 0; i < line!.length; i += 2) expect(3 * line![i]! + line![i + 1]!).toBeCloseTo(11.5, 9);
    const rows = [line![1]!, line!.at(-1)!].sort((a, b) => a - b);
    expect(rows).toEqual([0, 5]);
  });

  it('close around a hill, as far from its top as the height says', () => {
    const cone = grid(41, 41, (x, y) => 30 - Math.hypot(x - 20, y - 20));
    const [ring, ...more] = linesAt(cone, 18);
    expect(more).toEqual([]);
    expect(ring!.slice(0, 2)).toEqual(ring!.slice(-2));
    const radii = ring!.filter((_, i) => i % 2 === 0).map((x, k) => Math.hypot(x - 20, ring![2 * k + 1]! - 20));
    // Straight pieces across cells of one unit: within the bulge of a chord.
    expect(Math.min(...radii)).toBeGreaterThan(11.98);
    expect(Math.max(...radii)).toBeLessThan(12.02);
  });

  it('part at a saddle as its mean says, hold no cell with a corner missing and follow the level itself', () => {
    const saddle = grid(2, 2, (x, y) => (x === y ? 3 : 0));
    const ends = (level: number): string[] =>
      linesAt(saddle, level)
        .map((line) => line.map((each) => each.toFixed(2)).join(' '))
        .sort();
    // Under the mean the high corners are joined and each low one is cut off; over it each high one.
    expect(ends(1)).toEqual(['0.33 1.00 0.00 0.67', '0.67 0.00 1.00 0.33']);
    expect(ends(2)).toEqual(['0.00 0.33 0.33 0.00', '1.00 0.67 0.67 1.00']);
    expect(
      linesAt(
        grid(3, 3, (x, y) => (x === 1 && y === 1 ? Number.NaN : x)),
        0.5,
      ),
    ).toEqual([]);
    expect(
      linesAt(
        grid(4, 4, () => 7),
        7,
      ),
    ).toEqual([]);
  });
});

/** A plane that falls 0.6 m a metre along the descent, from 100 m at the edge. */
function planeRelief(): StudyRelief {
  const [columns, rows, stepM] = [60, 40, 2];
  const overBaseCm = Array.from({ length: columns * rows }, (_, i) => 10_000 - 120 * (i % columns) + 35 * 60);
  return { fromM: [-35, -40], stepM, columns, baseM: 0, overBaseCm };
}

describe('contours of a study', () => {
  it('stand across the descent at the heights that they name, at one interval', () => {
    const study = { ...studyWithLayouts(), relief: planeRelief() };
    const root = readSvg(planViewSvg(study, null, { units: 'metric', width: 900, height: 620 }));
    const [x0, , x1] = coordinates(ofClass(root, 'path', 'descent')[0]!);
    const scale = (x1! - x0!) / study.descent!.horizontalM;
    const words = elementsOf(root, 'text').map(({ textContent }) => textContent ?? '');
    const interval = Number(/contours (\S+) m/.exec(words.join('|'))![1]);
    const xs = ofClass(root, 'path', 'contour')
      .flatMap((path) => [...path.getAttribute('d')!.matchAll(/M(\S+) /g)].map(([, x]) => Number(x)))
      .sort((a, b) => a - b);
    expect(xs.length).toBeGreaterThan(10);
    for (const x of xs) {
      const heightM = 100 - 0.6 * ((x - x0!) / scale);
      expect(Math.abs(heightM / interval - Math.round(heightM / interval))).toBeLessThan(0.03);
    }
    for (let i = 1; i < xs.length; i++) expect((xs[i]! - xs[i - 1]!) * 0.6).toBeCloseTo(interval * scale, 1);
    const heights = ofClass(root, 'text', 'contour-height').map(({ textContent }) => Number(textContent));
    expect(heights.length).toBeGreaterThan(0);
    for (const height of heights) expect(height % (5 * interval)).toBe(0);
  });

  it('are drawn by the command line and on the sheet, and are missed nowhere in a study that has none', () => {
    const study = { ...studyWithLayouts(), relief: planeRelief() };
    for (const svg of [
      studySvg(study, { units: 'us' }),
      planPageSvg(planSheetOf({}, { relief: planeRelief() }), { paper: 'letter', units: 'us' }),
    ])
      expect(svg).toMatch(/class="contour index"[\s\S]*contours \d+ ft/);
    const { relief: _none, ...before } = study;
    expect(studySvg(before, { units: 'us' })).not.toMatch(/class="contour|contours/);
  });

  it('rest on the ground itself: every height of the grid is the ground’s there', async () => {
    const district = await demoDistrict();
    const site = district.site('kettle-bend');
    const work = await district.ground(site);
    const { relief, descent } = completeStudy(work, { ...district.request(site), ground: work.ground });
    const { start, direction } = work.side.descent!.line;
    const { fromM, stepM, columns, baseM, overBaseCm } = relief!;
    const rows = overBaseCm.length / columns;
    expect(Number.isInteger(rows)).toBe(true);
    expect(overBaseCm.length).toBeLessThan(3500);
    expect(fromM[0] + (columns - 1) * stepM).toBeGreaterThan(descent!.horizontalM + 20);
    for (const i of [0, 7, columns + 3, 5 * columns + 11, overBaseCm.length - 1]) {
      const along = fromM[0] + (i % columns) * stepM;
      const aside = fromM[1] + Math.floor(i / columns) * stepM;
      const [x, y] = [
        start.x + direction.x * along + direction.y * aside,
        start.y + direction.y * along - direction.x * aside,
      ];
      expect(Math.abs(baseM + overBaseCm[i]! / 100 - heightAt(work.ground, x, y))).toBeLessThan(0.0051);
    }
    await district.close();
  }, 60_000);
});

it('the sector that the rule calls high is rayed from its limit on', () => {
  const root = readSvg(studySvg(studyWithLayouts(), { units: 'us' }));
  const rays = [
    ...ofClass(root, 'path', 'fan-sector')[0]!
      .getAttribute('d')!
      .matchAll(/M(\S+) (\S+?)L(\S+) (\S+?)(?=M|$)/g),
  ];
  const bearings = rays.map(
    ([, ax, ay, bx, by]) => (Math.atan2(Number(by) - Number(ay), Number(bx) - Number(ax)) * 180) / Math.PI,
  );
  expect(bearings.length).toBeGreaterThan(8);
  expect(Math.min(...bearings)).toBeGreaterThan(45);
  expect(Math.max(...bearings)).toBeLessThan(80);
});
