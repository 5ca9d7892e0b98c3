import type { Position as Coordinate, Geometry } from 'geojson';
import type { Study, StudyMark } from '../study/index.ts';
import { type Box, grown, holds } from './boxes.ts';
import { markPaths } from './mark-paths.ts';
import type { PlanFrame } from './plan-frame.ts';
import { element, pathThrough } from './svg.ts';
import { SYMBOL, symbolAt } from './symbol.ts';

/** A mark that stands in the view, and where its name belongs. */
export interface DrawnMark {
  readonly mark: StudyMark;
  readonly x: number;
  readonly y: number;
}

/** The study's marks as the field book draws them: points as symbols, lines and areas as lines with their symbol once. */
export function markDrawing(study: Study, frame: PlanFrame): { svg: string; drawn: DrawnMark[] } {
  let svg = '';
  const drawn: DrawnMark[] = [];
  for (const mark of study.marks) {
    if (mark.kind === 'patient point') continue;
    const lines = linesOf(mark.geometry)
      .map((line) => line.flatMap(([lon, lat]) => frame.at({ lon, lat })))
      .flatMap((line) => runsNear(line, grown(frame.box, SYMBOL)));
    for (const line of lines) {
      const pen = mark.kind === 'water' ? frame.pens.waterLine : linePen(frame, mark);
      svg += element('path', { ...pen, d: pathThrough(line) });
    }
    const at =
      mark.geometry.type === 'Point' ? place(mark.geometry.coordinates, frame) : middleInside(lines, frame.box);
    if (!at) continue;
    const [x, y] = at;
    if (!holds(grown(frame.box, -SYMBOL / 2), { x0: x, y0: y, x1: x, y1: y })) continue;
    if (mark.geometry.type === 'Point' || mark.kind !== 'water')
      svg += symbolAt(markPaths[mark.kind], mark.kind, x, y, frame);
    drawn.push({ mark, x, y });
  }
  return { svg, drawn };
}

const linePen = ({ pens }: PlanFrame, { kind }: StudyMark) =>
  kind === 'wire' || kind === 'soft ground' ? pens.markDash : pens.markFine;

/** The runs of a line whose segments reach into a box: a creek of the whole district is not written into every drawing. */
function runsNear(line: readonly number[], box: Box): number[][] {
  const runs: number[][] = [];
  let run: number[] = [];
  for (let i = 0; i + 3 < line.length; i += 2) {
    const [ax, ay, bx, by] = [line[i], line[i + 1], line[i + 2], line[i + 3]];
    const reaches =
      Math.max(ax, bx) >= box.x0 &&
      Math.min(ax, bx) <= box.x1 &&
      Math.max(ay, by) >= box.y0 &&
      Math.min(ay, by) <= box.y1;
    if (reaches) {
      if (run.length === 0) run.push(ax, ay);
      run.push(bx, by);
    } else if (run.length > 0) {
      runs.push(run);
      run = [];
    }
  }
  if (run.length > 0) runs.push(run);
  return runs;
}

function place(coordinates: Coordinate, frame: PlanFrame): [number, number] | null {
  const [lon, lat] = coordinates;
  return frame.at({ lon, lat });
}

/** Lines of a geometry, rings included; none for a point. */
function linesOf(geometry: Geometry): Coordinate[][] {
  switch (geometry.type) {
    case 'LineString':
      return [geometry.coordinates];
    case 'MultiLineString':
    case 'Polygon':
      return geometry.coordinates;
    case 'MultiPolygon':
      return geometry.coordinates.flat();
    default:
      return [];
  }
}

/** The middle one of a mark's own points that lie inside the box, or of the points each 4 units along its lines. */
function middleInside(lines: readonly number[][], box: Box): [number, number] | null {
  const inside: [number, number][] = [];
  for (const line of lines) {
    for (let i = 0; i + 3 < line.length; i += 2) {
      const [ax, ay, bx, by] = [line[i], line[i + 1], line[i + 2], line[i + 3]];
      const steps = Math.min(2000, Math.max(1, Math.ceil(Math.hypot(bx - ax, by - ay) / 4)));
      for (let k = 0; k < steps; k++) {
        const x = ax + ((bx - ax) * k) / steps;
        const y = ay + ((by - ay) * k) / steps;
        if (x > box.x0 && x < box.x1 && y > box.y0 && y < box.y1) inside.push([x, y]);
      }
    }
  }
  return inside[Math.floor(inside.length / 2)] ?? null;
}
