import { localPlane } from '../../geo/index.ts';
import { MILE_M, type RoadNetwork } from '../../road/index.ts';
import type { UnitSystem } from '../../units/index.ts';
import { type Box as BoxOfWords, boxesAlong, holds, overlapOf } from '../boxes.ts';
import { element, num, pathThrough, text } from '../svg.ts';
import { type Draw, lineOf } from './flow.ts';
import { widthOf } from './measure.ts';
import { sheetPens as pens } from './sheet-pens.ts';
import type { LocatorRoad, PlanSheet } from './sheet-types.ts';

/** Half of what the locator shows from west to east, metres. */
const REACH_M = 1000;

/** The roads that a locator of a site can show. */
export function locatorRoads({ ways }: RoadNetwork, at: { lon: number; lat: number }): LocatorRoad[] {
  const plane = localPlane(at);
  return ways
    .map(({ name, line }) => ({ name, line: [...line] }))
    .filter(({ line }) =>
      line.some((_, i) => {
        if (i % 2 === 1) return false;
        const { x, y } = plane.toLocal({ lon: line[i]!, lat: line[i + 1]! });
        return Math.hypot(x, y) < 1.6 * REACH_M;
      }),
    );
}

/** A small map of the roads around, north up, with a scale bar; nothing where no roads are known. */
export const locatorBlock =
  ({ study, roads }: PlanSheet, units: UnitSystem, height: number): Draw =>
  ({ x, y, width }) => {
    if (roads.length === 0) return { svg: '', height: 0 };
    const plane = localPlane(study.site);
    const scale = width / 2 / REACH_M;
    const [cx, cy] = [x + width / 2, y + height / 2];
    const page = (lon: number, lat: number): [number, number] => {
      const at = plane.toLocal({ lon, lat });
      return [cx + at.x * scale, cy - at.y * scale];
    };
    const lines = roads.map(({ name, line }) => {
      const points: number[] = [];
      for (let i = 0; i + 1 < line.length; i += 2) points.push(...page(line[i]!, line[i + 1]!));
      return { name, points };
    });
    const casing = lines.map(({ points }) => element('path', { ...lineOf(3.4), d: pathThrough(points) })).join('');
    const inside = lines
      .map(({ points }) => element('path', { ...lineOf(1.8), stroke: '#ffffff', d: pathThrough(points) }))
      .join('');
    const view = element(
      'svg',
      {
        ...{ x, y, width, height, overflow: 'hidden' },
        viewBox: `${num(x)} ${num(y)} ${num(width)} ${num(height)}`,
      },
      casing + inside + names(lines, { x, y, width, height }, [cx, cy]),
    );
    const dot =
      element('circle', { ...lineOf(1.2), fill: '#ffffff', cx, cy, r: 6.5 }) +
      element('circle', { fill: '#000000', cx, cy, r: 3 });
    const frame = element('rect', { ...lineOf(0.8), x, y, width, height });
    return {
      svg: view + dot + frame + north(x + width - 12, y + 8) + bar(x + 8, y + height - 7, scale, units),
      height,
    };
  };

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Where a name may stand beside a point of its road: left or right of the middle, above or under, in shares of its own size. */
const BESIDE = [
  [0, -8],
  [0, 17],
  [1, 4],
  [-1, 4],
] as const;

/** Every road's name once, inside, where it crosses the fewest roads, clear of the site, the arrow, the bar and other names. */
function names(
  lines: readonly { name: string | null; points: number[] }[],
  box: Box,
  middle: [number, number],
): string {
  const roads = lines.flatMap(({ points }) => boxesAlong(points, 2));
  const inside = { x0: box.x + 2, y0: box.y + 2, x1: box.x + box.width - 2, y1: box.y + box.height - 2 };
  const taken = [
    { x0: middle[0] - 12, y0: middle[1] - 12, x1: middle[0] + 12, y1: middle[1] + 12 },
    { x0: inside.x1 - 22, y0: inside.y0, x1: inside.x1, y1: inside.y0 + 32 },
    { x0: inside.x0, y0: inside.y1 - 16, x1: inside.x0 + 96, y1: inside.y1 },
  ];
  const told = new Set<string>();
  let svg = '';
  for (const { name } of lines) {
    if (name === null || told.has(name)) continue;
    told.add(name);
    const half = widthOf(name, pens.textNote) / 2 + 3;
    let best: { readonly x: number; readonly y: number; readonly at: BoxOfWords; readonly cost: number } | null = null;
    for (const { points } of lines.filter((line) => line.name === name)) {
      for (let i = 0; i + 1 < points.length; i += 2) {
        for (const [aside, down] of BESIDE) {
          const [x, y] = [points[i]! + aside * (half + 4), points[i + 1]! + down];
          const at = { x0: x - half, y0: y - 9, x1: x + half, y1: y + 4 };
          if (!holds(inside, at) || taken.some((other) => overlapOf(at, other) > 0)) continue;
          const cost = roads.reduce((sum, road) => sum + overlapOf(at, road), 0);
          if (!best || cost < best.cost) best = { x, y, at, cost };
        }
      }
    }
    if (!best) continue;
    const halo = { stroke: '#ffffff', 'stroke-width': 2.5, 'paint-order': 'stroke', 'stroke-linejoin': 'round' };
    svg += text(best.x, best.y, name, { ...pens.textNote, ...halo, 'text-anchor': 'middle' });
    taken.push(best.at);
  }
  return svg;
}

/** Paper under what must be read over the roads. */
const patch = (x: number, y: number, width: number, height: number): string =>
  element('rect', { fill: '#ffffff', x, y, width, height });

const north = (x: number, y: number): string =>
  patch(x - 8, y - 3, 16, 25) +
  element('path', { fill: '#000000', d: `M${num(x)} ${num(y)}l4 9h-8z` }) +
  text(x, y + 19, 'N', { ...pens.numberStrong, 'text-anchor': 'middle' });

/** A quarter or half mile, or 500 m. */
function bar(x: number, y: number, scale: number, units: UnitSystem): string {
  const [lengthM, words] = units === 'us' ? [MILE_M / 4, '¼ mile'] : [500, '500 m'];
  const end = x + lengthM * scale;
  return (
    patch(x - 3, y - 8, lengthM * scale + 14 + widthOf(words, pens.number), 13) +
    element('path', {
      ...lineOf(1),
      class: 'locator-bar',
      d: `M${num(x)} ${num(y - 3)}v6M${num(x)} ${num(y)}H${num(end)}M${num(end)} ${num(y - 3)}v6`,
    }) +
    text(end + 5, y + 3.5, words, pens.number)
  );
}
