import { type Box, boxesAlong, holds, overlapOf } from '../boxes.ts';
import { text } from '../svg.ts';
import { widthOf } from './measure.ts';
import { sheetPens as pens } from './sheet-pens.ts';

/** Where a name may stand beside a point of its road: left or right of the middle, above or under, in shares of its own size. */
const BESIDE = [
  [0, -8],
  [0, 17],
  [1, 4],
  [-1, 4],
] as const;

/** Every road's name once, inside, where it crosses the fewest roads, clear of the site, the arrow, the bar and other names. */
export function locatorNames(
  lines: readonly { name: string | null; points: number[] }[],
  inside: Box,
  middle: readonly [number, number],
): string {
  const roads = lines.flatMap(({ points }) => boxesAlong(points, 2));
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
    let best: { readonly x: number; readonly y: number; readonly at: Box; readonly cost: number } | null = null;
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
