import { localPlane } from '../../geo/index.ts';
import { MILE_M, type RoadNetwork } from '../../road/index.ts';
import type { UnitSystem } from '../../units/index.ts';
import { element, num, pathThrough, text } from '../svg.ts';
import { type Draw, lineOf } from './flow.ts';
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

/** Every road's name once, beside a vertex that lies inside, clear of the site and of one another. */
function names(
  lines: readonly { name: string | null; points: number[] }[],
  box: Box,
  middle: [number, number],
): string {
  const told = new Set<string>();
  const taken: { x: number; y: number; half: number }[] = [{ x: middle[0], y: middle[1], half: 14 }];
  taken.push(
    { x: box.x + box.width - 12, y: box.y + 16, half: 10 },
    { x: box.x + 45, y: box.y + box.height - 10, half: 45 },
  );
  let svg = '';
  for (const { name, points } of lines) {
    if (name === null || told.has(name)) continue;
    const half = name.length * 2.6;
    for (let i = 0; i + 1 < points.length; i += 2) {
      const [px, py] = [points[i]!, points[i + 1]! - 6];
      const inside =
        px - half > box.x + 2 && px + half < box.x + box.width - 2 && py > box.y + 12 && py < box.y + box.height - 18;
      if (!inside || taken.some((other) => Math.abs(other.y - py) < 13 && Math.abs(other.x - px) < half + other.half))
        continue;
      const halo = { stroke: '#ffffff', 'stroke-width': 2.5, 'paint-order': 'stroke', 'stroke-linejoin': 'round' };
      svg += text(px, py, name, { ...pens.textNote, ...halo, 'text-anchor': 'middle' });
      taken.push({ x: px, y: py, half });
      told.add(name);
      break;
    }
  }
  return svg;
}

const north = (x: number, y: number): string =>
  element('path', { fill: '#000000', d: `M${num(x)} ${num(y)}l4 9h-8z` }) +
  text(x, y + 19, 'N', { ...pens.numberStrong, 'text-anchor': 'middle' });

/** A quarter or half mile, or 500 m. */
function bar(x: number, y: number, scale: number, units: UnitSystem): string {
  const [lengthM, words] = units === 'us' ? [MILE_M / 4, '¼ mile'] : [500, '500 m'];
  const end = x + lengthM * scale;
  return (
    element('path', {
      ...lineOf(1),
      class: 'locator-bar',
      d: `M${num(x)} ${num(y - 3)}v6M${num(x)} ${num(y)}H${num(end)}M${num(end)} ${num(y - 3)}v6`,
    }) + text(end + 5, y + 3.5, words, pens.number)
  );
}
