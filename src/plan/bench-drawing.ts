import type { Study, StudyBenchStation } from '../study/index.ts';
import { type BenchLines, offsetRuns } from './bench-lines.ts';
import { boxesAlong } from './boxes.ts';
import type { Pens } from './pens.ts';
import type { PlanFrame } from './plan-frame.ts';
import { element, num, pathThrough } from './svg.ts';

type Side = 'left' | 'right';

const SPACING = 7;
const LONG = 11;
const SHORT = 6;

/**
 * The bench as measured: a falling edge with hachures down-slope, a cut's toe with hachures that come down to it, no edge
 * found as a dashed end at the travelled way; usable edges thin; the travelled way with its lanes.
 */
export function benchDrawing(study: Study, frame: PlanFrame, bench: BenchLines): string {
  if (!study.bench) return '';
  const { pens } = frame;
  const half = study.bench.carriageway.widthM / 2;
  const parts: string[] = [];
  for (const side of ['left', 'right'] as const) {
    const out = side === 'left' ? -1 : 1;
    const edgePen = edgePenOf(study, side, pens);
    const falls = ofKinds(side, ['drop', 'bank']);
    for (const run of offsetRuns(bench, falls)) {
      parts.push(element('path', { ...edgePen, d: pathThrough(run) }));
      parts.push(element('path', { ...pens.hachure, d: hachures(run, out, [LONG, SHORT]) }));
      frame.taken.push(...boxesAlong(run, 5));
    }
    for (const run of offsetRuns(bench, ofKinds(side, ['rise']))) {
      parts.push(element('path', { ...pens.edgeToe, d: pathThrough(run) }));
      parts.push(element('path', { ...pens.hachure, d: hachures(run, out, [LONG, LONG / 2]) }));
    }
    const lost = (station: StudyBenchStation): number | null =>
      edgeOf(station, side) === null ? station.lineShiftM + out * half : null;
    for (const run of offsetRuns(bench, lost)) parts.push(element('path', { ...pens.edgeNone, d: pathThrough(run) }));
    const usable = (station: StudyBenchStation): number | null =>
      side === 'left' ? station.usableLeftOffsetM : station.usableRightOffsetM;
    for (const run of offsetRuns(bench, usable)) parts.push(element('path', { ...pens.usable, d: pathThrough(run) }));
  }
  const { lanes, widthM } = study.bench.carriageway;
  for (let k = 0; k <= lanes; k++) {
    const from = -half + (widthM * k) / lanes;
    for (const run of offsetRuns(bench, ({ lineShiftM }) => lineShiftM + from)) {
      parts.push(element('path', { ...(k === 0 || k === lanes ? pens.lane : pens.laneMiddle), d: pathThrough(run) }));
    }
  }
  return parts.join('');
}

/** Measured on the ground: heavy; assumed: grey and dotted; computed: thin. A measured value speaks for the site's own side. */
function edgePenOf({ origins, site }: Study, side: Side, pens: Pens) {
  const how = origins['edge.offsetM']?.how;
  if (how === 'assumed') return pens.edgeAssumed;
  return how === 'measured' && side === site.side ? pens.edgeTaped : pens.edgeDrop;
}

const edgeOf = (station: StudyBenchStation, side: Side): number | null =>
  side === 'left' ? station.leftEdgeOffsetM : station.rightEdgeOffsetM;

const ofKinds =
  (side: Side, kinds: readonly string[]) =>
  (station: StudyBenchStation): number | null =>
    kinds.includes(side === 'left' ? station.leftEdgeKind : station.rightEdgeKind) ? edgeOf(station, side) : null;

/** Ticks square to a run of page points on its left (out −1) or right (out 1) hand, lengths taken in turn. */
function hachures(run: readonly number[], out: number, lengths: readonly number[]): string {
  let d = '';
  let next = 0;
  let count = 0;
  for (let i = 0; i + 3 < run.length; i += 2) {
    const [ax, ay, bx, by] = [run[i], run[i + 1], run[i + 2], run[i + 3]];
    const length = Math.hypot(bx - ax, by - ay);
    if (length === 0) continue;
    const [ux, uy] = [(bx - ax) / length, (by - ay) / length];
    while (next < length) {
      const tick = lengths[count % lengths.length] * out;
      d += `M${num(ax + ux * next)} ${num(ay + uy * next)}l${num(-uy * tick)} ${num(ux * tick)}`;
      next += SPACING;
      count++;
    }
    next -= length;
  }
  return d;
}
