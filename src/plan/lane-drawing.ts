import type { Study, StudyLayout } from '../study/index.ts';
import type { BenchLines } from './bench-lines.ts';
import { hatch } from './hatch.ts';
import type { PlanFrame } from './plan-frame.ts';
import { fieldEnds, spotCorners, spotsOf } from './plan-ground.ts';
import { element } from './svg.ts';

/** Half of the strip along the haul field in which people walk, metres. */
const HALF_STRIP_M = 1;

export interface LaneDrawing {
  readonly svg: string;
  /** Middle of the hatched stretch, page point; null where no lane is taken. */
  readonly middle: [number, number] | null;
  /** First and last station element of that stretch. */
  readonly span: readonly [number, number] | null;
}

export const NO_LANE: LaneDrawing = { svg: '', middle: null, span: null };

/** The lanes that a layout blocks, hatched over the stretch of road that its outlines and its haul field take. */
export function laneDrawing(study: Study, layout: StudyLayout, frame: PlanFrame, bench: BenchLines): LaneDrawing {
  if (!study.bench || layout.lanesBlocked === 0 || bench.stations.length < 2) return NO_LANE;
  const { lanes, widthM } = study.bench.carriageway;
  const laneM = widthM / lanes;
  const taken = new Set<number>();
  let first = Number.POSITIVE_INFINITY;
  let last = Number.NEGATIVE_INFINITY;
  for (const [along, aside] of takenPoints(study, layout, frame)) {
    const { i, offsetM } = bench.placed(along, aside);
    const lane = Math.floor((offsetM - bench.stations[i].lineShiftM + widthM / 2) / laneM);
    first = Math.min(first, i);
    last = Math.max(last, i);
    if (lane >= 0 && lane < lanes) taken.add(lane);
  }
  // The study's own count rules: where it says more than the outline shows, the whole way is hatched.
  if (layout.lanesBlocked > taken.size) for (let k = 0; k < lanes; k++) taken.add(k);
  let d = '';
  for (const lane of taken) {
    const inner = -widthM / 2 + lane * laneM;
    const ring: number[] = [];
    for (let i = first; i <= last; i++) ring.push(...bench.point(i, bench.stations[i].lineShiftM + inner));
    for (let i = last; i >= first; i--) ring.push(...bench.point(i, bench.stations[i].lineShiftM + inner + laneM));
    d += hatch(ring, -38, 5.5);
  }
  const at = Math.round((first + last) / 2);
  return {
    svg: element('path', { ...frame.pens.laneHatch, d }),
    middle: bench.point(at, bench.stations[at].lineShiftM),
    span: [first, last],
  };
}

/** Points around the outlines and along both sides of the haul field, [along, aside], metres. */
function takenPoints(study: Study, layout: StudyLayout, { ground }: PlanFrame): [number, number][] {
  const points: [number, number][] = [];
  const along = (ax: number, ay: number, bx: number, by: number): void => {
    const steps = Math.max(1, Math.ceil(Math.hypot(bx - ax, by - ay)));
    for (let k = 0; k <= steps; k++) points.push([ax + ((bx - ax) * k) / steps, ay + ((by - ay) * k) / steps]);
  };
  for (const spot of spotsOf(study, layout)) {
    const c = spotCorners(ground, spot);
    for (let i = 0; i < 8; i += 2) along(c[i], c[i + 1], c[(i + 2) % 8], c[(i + 3) % 8]);
  }
  const [from, to] = fieldEnds(layout).map((end) => ground.place(end));
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1;
  const nx = (-(to[1] - from[1]) / length) * HALF_STRIP_M;
  const ny = ((to[0] - from[0]) / length) * HALF_STRIP_M;
  for (const sign of [-1, 1]) {
    along(from[0] + sign * nx, from[1] + sign * ny, to[0] + sign * nx, to[1] + sign * ny);
  }
  return points;
}
