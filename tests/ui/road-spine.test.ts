import { expect, test } from 'vitest';
import {
  HEAD_PX,
  listLayout,
  ROW_PX,
  TIGHT_LONG_ROW_PX,
  TIGHT_ROW_PX,
  tightHeight,
} from '../../src/ui/survey/list-layout.ts';
import { roadSpine } from '../../src/ui/survey/road-spine.ts';
import type { SiteRow } from '../../src/ui/survey/site-rows.ts';

const row = (roadName: string | null, along: SiteRow['along'] = null): SiteRow =>
  ({ site: { id: 'x', roadName }, along, read: null }) as unknown as SiteRow;
const at = (m: number, mile: number | null = null): SiteRow => row('Cinder Grade Road', { road: 0, m, mile });

test('each road has its name above its sites; rows of any other order follow one another', () => {
  const rows = [row('A'), row('A'), row('B'), row(null)];
  const { tops, groups } = listLayout(rows, true);
  expect(groups).toEqual([
    { road: 'A', first: 0, end: 2, topPx: 0, endPx: 150 },
    { road: 'B', first: 2, end: 3, topPx: HEAD_PX + 2 * ROW_PX, endPx: 240 },
    { road: null, first: 3, end: 4, topPx: 2 * HEAD_PX + 3 * ROW_PX, endPx: 330 },
  ]);
  expect(tops).toEqual([30, 90, 180, 270, 330]);
  expect(listLayout(rows, false)).toEqual({ tops: [0, 60, 120, 180, 240], groups: [] });
  expect(listLayout(rows, true, tightHeight).tops).toEqual([30, 72, 144, 216, 258]);
  expect(listLayout([], true)).toEqual({ tops: [0], groups: [] });
});

test('an undecided site has a line more, for its rope and resets', () => {
  const read = (className: string) => ({ ...row('A'), read: { className } }) as unknown as SiteRow;
  const { tops, groups } = listLayout([read('steep'), read('undecided'), read('low')], true, tightHeight);
  const [a, b, c, end] = tops as [number, number, number, number];
  expect([b - a, c - b, end - c]).toEqual([TIGHT_ROW_PX, TIGHT_LONG_ROW_PX, TIGHT_ROW_PX]);
  expect(groups[0]!.endPx).toBe(end);
});

test('dots keep the proportions of the road, inside its line', () => {
  const lengthPx = 240;
  const { dots, ticks } = roadSpine([at(100), at(200), at(500), at(1100)], lengthPx);
  const [a, b, c, d] = dots as [number, number, number, number];
  expect((c - a) / (b - a)).toBeCloseTo(4, 9);
  expect((d - a) / (b - a)).toBeCloseTo(10, 9);
  expect(a).toBeGreaterThan(0);
  expect(d).toBeLessThan(lengthPx);
  expect(ticks).toEqual([]);
});

test('half miles stand in proportion between the sites that have a mile, whichever way the miles run', () => {
  for (const [first, last] of [
    [3.2, 4.2],
    [4.2, 3.2],
  ] as const) {
    const { dots, ticks } = roadSpine([at(0, first), at(1000, last)], 120);
    expect(ticks.map(({ mile }) => mile).sort()).toEqual([4, null]);
    const four = ticks.find(({ mile }) => mile === 4)!;
    const share = (four.px - dots[0]!) / (dots[1]! - dots[0]!);
    expect(share).toBeCloseTo((4 - first) / (last - first), 9);
  }
});

test('a site whose place is not known has no dot; sites without a mile stand by their metres alone', () => {
  const { dots, ticks } = roadSpine([at(0, 1.4), at(500), at(1000, 2.1), row('Cinder Grade Road')], 240);
  expect(dots[3]).toBeNull();
  expect(dots[1]! * 2).toBeCloseTo(dots[0]! + dots[2]!, 9);
  expect(ticks.map(({ mile }) => mile)).toEqual([null, 2]);
  expect(roadSpine([row('A'), row('A')], 120)).toEqual({ dots: [null, null], ticks: [] });
});

test('one site, or sites at one place, stand in the middle of their line', () => {
  expect(roadSpine([at(700, 2), at(700, 2)], 120).dots).toEqual([60, 60]);
});
