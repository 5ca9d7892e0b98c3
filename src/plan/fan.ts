import { toRadians } from '../units/index.ts';
import { type Box, overlapOf } from './boxes.ts';
import type { ProfileFrame } from './profile-frame.ts';
import { element, num, pathThrough, text } from './svg.ts';
import { textWidth } from './text-width.ts';

/** Between the fine rays of the high sector, degrees; every second one begins farther out, so that they never close up. */
const SECTOR_STEP_DEG = 2.5;
const ARC_M = 12;
const RAY_M = 16;
/** Smallest arc that can carry its words, drawing units. */
const SMALLEST_ARC = 54;

/**
 * The rule's fan at the edge: level, the two limits as rays, the high sector rayed, and the words between them, each word in the part of its
 * sector that the ground (seen from the edge, degrees below level) leaves free. Lines lie under the ground, words over it:
 * they come apart. Boxes of the words are added to `frame.taken`.
 */
export function edgeFan(
  frame: ProfileFrame,
  edgeElevationM: number,
  rule: { lowMaxDeg: number; highMinDeg: number } | null,
  groundDegAt: (rangeM: number) => number,
): { ink: string; words: string } {
  const { pens } = frame;
  const radius = Math.max(SMALLEST_ARC, ARC_M * frame.scale);
  const reach = (radius * RAY_M) / ARC_M;
  const x = frame.px(0);
  const y = frame.py(edgeElevationM);
  const point = (deg: number, r: number): [number, number] => [
    x + Math.cos(toRadians(deg)) * r,
    y + Math.sin(toRadians(deg)) * r,
  ];
  const ray = (deg: number, r: number): number[] => [x, y, ...point(deg, r)];
  const ground = [...frame.taken];
  let out = element('path', { ...pens.levelRay, d: pathThrough(ray(0, reach)) });
  if (!rule) return { ink: out, words: '' };
  const [ax, ay] = point(0, radius);
  const [bx, by] = point(80, radius);
  out += element('path', {
    ...pens.arc,
    d: `M${num(ax)} ${num(ay)}A${num(radius)} ${num(radius)} 0 0 1 ${num(bx)} ${num(by)}`,
  });
  for (let deg = 0; deg <= 80; deg += 5) {
    const [tx, ty] = point(deg, radius);
    frame.taken.push({ x0: tx - 6, y0: ty - 6, x1: tx + 4, y1: ty + 6 });
    const inner = radius - (deg % 10 === 0 ? 5 : 3);
    out += element('path', { ...pens.arc, d: pathThrough([...point(deg, inner), ...point(deg, radius)]) });
  }
  out += element('path', { ...pens.fanSector, d: sector(rule.highMinDeg, radius, point) });
  const labels: Box[] = [];
  let told = '';
  for (const limit of [rule.lowMaxDeg, rule.highMinDeg]) {
    out += element('path', { ...pens.ray, d: pathThrough(ray(limit, reach)) });
    const [lx, ly] = point(limit, reach + 9);
    told += text(lx, ly + 4, `${limit}°`, { ...pens.small, 'text-anchor': 'middle' });
    labels.push({ x0: lx - 12, y0: ly - 8, x1: lx + 12, y1: ly + 8 });
  }
  const groundDeg = groundDegAt(radius / frame.scale);
  const words: [number, number, string][] = [
    [0, rule.lowMaxDeg, 'low'],
    [rule.lowMaxDeg, rule.highMinDeg, 'steep'],
    [rule.highMinDeg, 80, 'high'],
  ];
  for (const [from, to, word] of words) {
    const bearing = freeMiddle(from, to, groundDeg);
    const places = [radius + 8, reach + 16, reach + 30].map((r) => point(bearing, r));
    const clear = (boxes: readonly Box[]) =>
      places.find(([px, py]) => boxes.every((box) => overlapOf(wordBox(px, py, word), box) === 0));
    const [wx, wy] = clear([...labels, ...ground]) ?? clear(labels) ?? places[0];
    told += text(wx, wy + 4, word, pens.word);
    labels.push(wordBox(wx, wy, word));
  }
  frame.taken.push(...labels);
  return { ink: out, words: told };
}

/** Fine rays through the sector that the rule calls high. */
function sector(fromDeg: number, radius: number, point: (deg: number, r: number) => [number, number]): string {
  let d = '';
  for (let k = 1; fromDeg + k * SECTOR_STEP_DEG < 80; k++) {
    const deg = fromDeg + k * SECTOR_STEP_DEG;
    d += pathThrough([...point(deg, radius * (k % 2 === 0 ? 0.3 : 0.6)), ...point(deg, radius - 6)]);
  }
  return d;
}

const wordBox = (x: number, y: number, word: string): Box => ({
  x0: x - 3,
  y0: y - 10,
  x1: x + textWidth([word], 13),
  y1: y + 8,
});

/** Middle of the larger part of a sector that a bearing divides, degrees. */
function freeMiddle(from: number, to: number, bearing: number): number {
  if (bearing <= from || bearing >= to) return (from + to) / 2;
  return bearing - from > to - bearing ? (from + bearing) / 2 : (bearing + to) / 2;
}
