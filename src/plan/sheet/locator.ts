import { localPlane } from '../../geo/index.ts';
import { MILE_M, type RoadNetwork } from '../../road/index.ts';
import type { UnitSystem } from '../../units/index.ts';
import type { PlanInset } from '../inset-corner.ts';
import { placePaths } from '../place-paths.ts';
import { element, num, pathThrough, text } from '../svg.ts';
import { type Draw, lineOf } from './flow.ts';
import { locatorNames } from './locator-names.ts';
import { widthOf } from './measure.ts';
import { sheetPens as pens } from './sheet-pens.ts';
import type { LocatorRoad, PlanSheet, SheetPlace } from './sheet-types.ts';

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

/** Sizes in a corner of the plan view, drawing units: 50, 42 and 35 mm wide. */
const INSETS = [
  { width: 190, height: 132 },
  { width: 160, height: 112 },
  { width: 132, height: 92 },
] as const;

/** The same map for a free corner of the plan view, on its own paper; no size where no roads are known. */
export const locatorInset = (sheet: PlanSheet, units: UnitSystem): PlanInset => ({
  sizes: sheet.roads.length === 0 ? [] : INSETS,
  draw: ({ x0, y0, x1, y1 }) =>
    element('rect', { fill: '#ffffff', x: x0, y: y0, width: x1 - x0, height: y1 - y0 }) +
    locatorBlock(sheet, units, y1 - y0)({ x: x0, y: y0, width: x1 - x0 }).svg,
});

/** A small map of the roads around, north up, with a scale bar; nothing where no roads are known. */
export const locatorBlock =
  ({ study, roads, places }: PlanSheet, units: UnitSystem, height: number): Draw =>
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
    const paved = lines
      .map(({ points }) => element('path', { ...lineOf(1.8), stroke: '#ffffff', d: pathThrough(points) }))
      .join('');
    const around = places.flatMap((place) => {
      const [px, py] = page(place.at.lon, place.at.lat);
      const within = px > x + 8 && px < x + width - 8 && py > y + 8 && py < y + height - 8;
      // Beside the site itself there is no room; the drawing shows it.
      return within && Math.hypot(px - cx, py - cy) > 16 ? [{ place, px, py }] : [];
    });
    const signs = around.map(({ place, px, py }) => sign(place.kind, px, py)).join('');
    const labelled = [...around.map(({ place, px, py }) => ({ name: place.kind, points: [px, py] })), ...lines];
    const inside = { x0: x + 2, y0: y + 2, x1: x + width - 2, y1: y + height - 2 };
    const view = element(
      'svg',
      {
        ...{ x, y, width, height, overflow: 'hidden' },
        viewBox: `${num(x)} ${num(y)} ${num(width)} ${num(height)}`,
      },
      casing + paved + signs + locatorNames(labelled, inside, [cx, cy]),
    );
    const dot =
      element('circle', { ...lineOf(1.2), fill: '#ffffff', cx, cy, r: 6.5 }) +
      element('circle', { fill: '#000000', cx, cy, r: 3 });
    const frame = element('rect', { ...lineOf(0.8), class: 'locator', x, y, width, height });
    return {
      svg: view + dot + frame + north(x + width - 12, y + 8) + bar(x + 8, y + height - 7, scale, units),
      height,
    };
  };

/** A surveyed place, small, on its own paper. */
function sign(kind: SheetPlace['kind'], x: number, y: number): string {
  const { line, fine = '' } = placePaths[kind];
  return element(
    'g',
    {
      class: `locator-place place-${kind.replaceAll(' ', '-')}`,
      transform: `translate(${num(x - 6)} ${num(y - 6)}) scale(0.5)`,
    },
    element('rect', { fill: '#ffffff', width: 24, height: 24 }) + element('path', { ...lineOf(2.2), d: line + fine }),
  );
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
