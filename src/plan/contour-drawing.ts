import type { Study, StudyRelief } from '../study/index.ts';
import { FOOT_M, thousands, toRadians, type UnitSystem } from '../units/index.ts';
import { upright } from './apparatus-drawing.ts';
import { type BenchLines, offsetRuns } from './bench-lines.ts';
import { boxesAlong, holds } from './boxes.ts';
import { isoLines } from './iso-lines.ts';
import { crowding } from './label-space.ts';
import type { PlanFrame } from './plan-frame.ts';
import { element, num, pathThrough, text } from './svg.ts';
import { textWidth } from './text-width.ts';

/** Contours lie no nearer than this on the governing slope, drawing units: closer, they are tint and no lines. */
const LEAST_GAP = 8.5;
const INTERVALS = { us: [1, 2, 5, 10, 20, 50, 100], metric: [0.5, 1, 2, 5, 10, 20, 50] } as const;
/** Every fifth line is heavier and carries its height. */
const INDEX = 5;
/** Shorter lines are the noise of flat ground, drawing units. */
const LEAST_LENGTH = 24;

/** Places for a height are tried this far apart along its line, drawing units. */
const LOOK_EACH = 16;

/** A contour on the page: x, y flat, its height in the reader's unit, whether it is an index line. */
interface Contour {
  readonly points: readonly number[];
  readonly height: number;
  readonly index: boolean;
}

export interface ContourDrawing {
  readonly svg: string;
  readonly index: readonly Contour[];
  /** "Contours 5 ft"; empty where there are none. */
  readonly words: string;
}

/** The ground around as contour lines at a round interval in the reader's unit; the road bench is left clear for what stands on it. */
export function contourDrawing(study: Study, frame: PlanFrame, bench: BenchLines, units: UnitSystem): ContourDrawing {
  const { relief } = study;
  if (!relief) return { svg: '', index: [], words: '' };
  const unitM = units === 'us' ? FOOT_M : 1;
  const steepest = Math.tan(toRadians(Math.max(15, study.angle?.governingDeg ?? 30)));
  const gapOf = (interval: number): number => ((interval * unitM) / steepest) * frame.scale;
  const interval = INTERVALS[units].find((each) => gapOf(each) >= LEAST_GAP) ?? INTERVALS[units].at(-1)!;
  const contours = linesOf(relief, frame, interval, unitM);
  if (contours.length === 0) return { svg: '', index: [], words: '' };
  const { pens } = frame;
  const draw = (pen: object, list: readonly Contour[]): string =>
    list.length === 0 ? '' : element('path', { ...pen, d: list.map(({ points }) => pathThrough(points)).join('') });
  const index = contours.filter((one) => one.index);
  const thin = contours.filter((one) => !one.index);
  const svg = draw(pens.contour, thin) + draw(pens.contourIndex, index) + clearBench(study, frame, bench);
  return { svg, index, words: `contours ${interval} ${units === 'us' ? 'ft' : 'm'}` };
}

function linesOf(relief: StudyRelief, frame: PlanFrame, interval: number, unitM: number): Contour[] {
  const { columns, overBaseCm, baseM, fromM, stepM } = relief;
  const heights = Float64Array.from(overBaseCm, (cm) => (cm === null ? Number.NaN : (baseM + cm / 100) / unitM));
  const grid = { columns, rows: heights.length / columns, heights };
  const list: Contour[] = [];
  for (const { step, lines } of isoLines(grid, interval)) {
    for (const line of lines) {
      for (const points of inView(frame.page(line.map((cells, i) => fromM[i % 2]! + cells * stepM)), frame)) {
        if (lengthOf(points) >= LEAST_LENGTH) list.push({ points, height: step * interval, index: step % INDEX === 0 });
      }
    }
  }
  return list;
}

/** The parts of a line that run through the view, each with the points on both sides of the neat line. */
function inView(points: readonly number[], { box }: PlanFrame): number[][] {
  const inside = (i: number): boolean =>
    holds(box, { x0: points[i]!, y0: points[i + 1]!, x1: points[i]!, y1: points[i + 1]! });
  const parts: number[][] = [];
  let part: number[] = [];
  for (let i = 0; i + 1 < points.length; i += 2) {
    const near = inside(i) || (i > 0 && inside(i - 2)) || (i + 3 < points.length && inside(i + 2));
    if (near) part.push(points[i]!, points[i + 1]!);
    else if (part.length > 0) {
      parts.push(part);
      part = [];
    }
  }
  return part.length > 0 ? [...parts, part] : parts;
}

/** Paper over the bench between its edges, where both are known, else over the travelled way. */
function clearBench(study: Study, { pens }: PlanFrame, bench: BenchLines): string {
  const half = (study.bench?.carriageway.widthM ?? 0) / 2;
  const [left] = offsetRuns(bench, (at) => at.leftEdgeOffsetM ?? at.lineShiftM - half);
  const [right] = offsetRuns(bench, (at) => at.rightEdgeOffsetM ?? at.lineShiftM + half);
  if (!left || !right) return '';
  const back: number[] = [];
  for (let i = right.length - 2; i >= 0; i -= 2) back.push(right[i]!, right[i + 1]!);
  return element('path', { ...pens.paper, class: 'bench-ground', d: `${pathThrough([...left, ...back])}Z` });
}

/** The height of each index line along it, once, where nothing else stands. */
export function contourHeights({ index }: ContourDrawing, frame: PlanFrame): string {
  const { box, pens } = frame;
  const inside = { x0: box.x0 + 4, y0: box.y0 + 4, x1: box.x1 - 4, y1: box.y1 - 4 };
  const told = new Set<number>();
  let svg = '';
  for (const { points, height } of index) {
    if (told.has(height)) continue;
    const words = thousands(height);
    const half = textWidth([words], 11) / 2 + 2;
    let [lastX, lastY] = [Number.NEGATIVE_INFINITY, 0];
    for (let i = 2; i + 3 < points.length; i += 2) {
      const [x, y] = [points[i]!, points[i + 1]!];
      if (Math.hypot(x - lastX, y - lastY) < LOOK_EACH) continue;
      [lastX, lastY] = [x, y];
      const middle = { x0: x - 6, y0: y - 6, x1: x + 6, y1: y + 6 };
      if (!holds(inside, middle) || crowding(middle, box, frame.taken) > 0) continue;
      const deg = upright(
        (Math.atan2(points[i + 3]! - points[i - 1]!, points[i + 2]! - points[i - 2]!) * 180) / Math.PI,
      );
      const [ux, uy] = [Math.cos(toRadians(deg)), Math.sin(toRadians(deg))];
      const boxes = boxesAlong([x - ux * half, y - uy * half, x + ux * half, y + uy * half], 6);
      if (!boxes.every((each) => holds(inside, each) && crowding(each, box, frame.taken) === 0)) continue;
      frame.taken.push(...boxes);
      told.add(height);
      svg += text(x, y + 4, words, {
        ...pens.note,
        class: 'lab-n contour-height',
        'text-anchor': 'middle',
        transform: `rotate(${num(deg)} ${num(x)} ${num(y)})`,
      });
      break;
    }
  }
  return svg;
}

function lengthOf(points: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i + 3 < points.length; i += 2)
    sum += Math.hypot(points[i + 2]! - points[i]!, points[i + 3]! - points[i + 1]!);
  return sum;
}
