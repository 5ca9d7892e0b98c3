import { edgeKindAt } from '../road/index.ts';
import { toRadians } from '../units/index.ts';
import { placeOnBench } from './bench-place.ts';
import { type Box, boxesMeet, boxOf, segmentHitsBox } from './box-hit.ts';
import { type Footprint, outline } from './footprint.ts';
import { hazardHits } from './hazard-hits.ts';
import type { Hazard } from './hazards.ts';
import { onFirmMark } from './on-firm-mark.ts';
import { SETBACK_RULES, type SetbackRule } from './setbacks.ts';
import type { StandingRoom } from './standing-room.ts';

/** What may be wrong with a footprint, as bits; those in `REFUSES` refuse it, the others are "check". */
export const FAULT = {
  offBench: 1,
  setback: 2,
  slope: 4,
  mark: 8,
  edgeArea: 16,
  unreachable: 32,
  shoulder: 64,
  narrow: 128,
  slopeCheck: 256,
} as const;
export const REFUSES = FAULT.shoulder - 1;

/** Scratch of `standingFaults`, filled by it so that a search makes no object a footprint. */
export interface StandingScratch {
  /** Element and offset of the point placed last. */
  readonly at: Float64Array;
  /** Elements that the footprint spans, rounded outward. */
  firstElement: number;
  lastElement: number;
  /** Offsets to the right of the travelled way's middle that it spans, metres; without end where it leaves the bench. */
  leastAsideM: number;
  mostAsideM: number;
  /** What sets the first limit that was passed. */
  rule: SetbackRule | null;
  /** Outline about the origin of the footprint tested last, kept while only its place changes. */
  shape: { readonly of: Footprint; readonly points: Float64Array } | null;
}

export const standingScratch = (): StandingScratch => ({
  ...{ at: new Float64Array(2), firstElement: 0, lastElement: -1 },
  ...{ leastAsideM: 0, mostAsideM: 0, rule: null, shape: null },
});

/** The outline is tested at points this far apart, metres; each takes the inner of the limits of its two stations. */
const STEP_M = 0.75;
/** Edges farther along than this from the footprint cannot matter, stations. */
const BEYOND = 8;
/** A section is not square to an edge that runs at a slant: so much of its setback may be lost to that, as a share. */
const SLANT_SHARE = 0.9;

/**
 * What is wrong with an apparatus on a footprint, as bits of `FAULT`; 0 where nothing is. Its whole outline keeps the
 * setbacks at every station it spans and, measured straight, nine tenths of them and never under 1.0 m from the edge as a
 * line, which on bends and where sections cross is the stricter test. `hazards` are those near enough to matter; `from` is
 * an element near by.
 */
export function standingFaults(
  room: StandingRoom,
  footprint: Footprint,
  from: number,
  hazards: readonly Hazard[],
  scratch: StandingScratch,
): number {
  const faults = onBench(room, footprint, from, hazards, scratch);
  if (faults & FAULT.offBench) return faults;
  const box = boxOf(footprint);
  return faults | offEdges(room, box, scratch) | slopes(room, box, scratch) | around(room, box, hazards, scratch);
}

function onBench(
  room: StandingRoom,
  footprint: Footprint,
  from: number,
  hazards: readonly Hazard[],
  scratch: StandingScratch,
): number {
  const { leftM, rightM, fullLeftM, fullRightM, wayLeftM, wayRightM, leftRule, rightRule } = room;
  const { bench } = room.ground;
  const { shiftM } = bench;
  const { at } = scratch;
  const points = shapeOf(footprint, scratch);
  const { x, y } = footprint;
  let faults = 0;
  let first = Number.POSITIVE_INFINITY;
  let last = Number.NEGATIVE_INFINITY;
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  let off = false;
  scratch.rule = null;
  for (let k = 0; k < points.length; k += 2) {
    if (!placeOnBench(bench, x + points[k], y + points[k + 1], from, at)) {
      scratch.leastAsideM = Number.NEGATIVE_INFINITY;
      scratch.mostAsideM = Number.POSITIVE_INFINITY;
      return FAULT.offBench;
    }
    const q = at[1];
    const i = Math.floor(at[0]);
    const j = Math.min(i + 1, bench.count - 1);
    if (at[0] < first) first = at[0];
    if (at[0] > last) last = at[0];
    const aside = q - shiftM[at[0] - i < 0.5 ? i : j];
    if (aside < least) least = aside;
    if (aside > most) most = aside;
    if (!(leftM[i] <= rightM[i] && leftM[j] <= rightM[j])) {
      // Where the limits have crossed the bench is too narrow for anything; where there are none nothing is known.
      faults |= Number.isNaN(leftM[i] + rightM[i] + leftM[j] + rightM[j]) ? FAULT.offBench : FAULT.setback;
      scratch.rule ??= SETBACK_RULES[rightRule[i]];
    } else if (q < leftM[i] || q < leftM[j]) {
      faults |= FAULT.setback;
      scratch.rule ??= SETBACK_RULES[leftRule[q < leftM[i] ? i : j]];
    } else if (q > rightM[i] || q > rightM[j]) {
      faults |= FAULT.setback;
      scratch.rule ??= SETBACK_RULES[rightRule[q > rightM[i] ? i : j]];
    } else if (q < fullLeftM[i] || q < fullLeftM[j] || q > fullRightM[i] || q > fullRightM[j]) faults |= FAULT.narrow;
    if (q < wayLeftM[i] || q < wayLeftM[j] || q > wayRightM[i] || q > wayRightM[j]) {
      off ||= !onFirmMark(hazards, x + points[k], y + points[k + 1]);
    }
  }
  scratch.firstElement = Math.floor(first);
  scratch.lastElement = Math.min(bench.count - 1, Math.ceil(last));
  scratch.leastAsideM = least;
  scratch.mostAsideM = most;
  return off ? faults | FAULT.shoulder : faults;
}

function shapeOf(footprint: Footprint, scratch: StandingScratch): Float64Array {
  const { headingDeg, lengthM, widthM } = footprint;
  const kept = scratch.shape;
  if (kept && kept.of.headingDeg === headingDeg && kept.of.lengthM === lengthM && kept.of.widthM === widthM) {
    return kept.points;
  }
  const points = outline({ ...footprint, x: 0, y: 0 }, STEP_M);
  scratch.shape = { of: footprint, points };
  return points;
}

function offEdges(room: StandingRoom, box: Box, scratch: StandingScratch): number {
  const { bench, settings } = room.ground;
  const from = Math.max(0, scratch.firstElement - BEYOND);
  const to = Math.min(bench.count - 2, scratch.lastElement + BEYOND);
  const { x, y, ux, uy, halfWidthM } = box;
  for (let s = 0; s < 2; s++) {
    const side = s === 0 ? bench.left : bench.right;
    const least = s === 0 ? room.leastLeftM : room.leastRightM;
    const { edgeX, edgeY } = side;
    for (let i = from; i <= to; i++) {
      if (Number.isNaN(edgeX[i] + edgeX[i + 1])) continue;
      if (edgeKindAt(side, i) === 'none' || edgeKindAt(side, i + 1) === 'none') continue;
      const known = Math.min(least[i], least[i + 1]);
      const setback = Number.isNaN(known) ? settings.narrowLeastM : known;
      const owed = Math.max(Math.min(setback, settings.narrowLeastM), SLANT_SHARE * setback);
      // Most of an edge runs beside the box, well clear of it: a sieve before the exact test.
      const clear = halfWidthM + owed + SIEVE_SLACK_M;
      const a = (edgeX[i] - x) * uy - (edgeY[i] - y) * ux;
      const b = (edgeX[i + 1] - x) * uy - (edgeY[i + 1] - y) * ux;
      if ((a > clear && b > clear) || (a < -clear && b < -clear)) continue;
      if (segmentHitsBox(box, owed, edgeX[i], edgeY[i], edgeX[i + 1], edgeY[i + 1])) {
        scratch.rule ??= SETBACK_RULES[(s === 0 ? room.leftRule : room.rightRule)[i]];
        return FAULT.setback;
      }
    }
  }
  return 0;
}

/** Rounding alone sieves nothing, metres. */
const SIEVE_SLACK_M = 1e-6;

/** Grade and crossfall of the road, and pitch and roll of the apparatus, at every station it spans. */
function slopes(room: StandingRoom, { ux, uy }: Box, scratch: StandingScratch): number {
  const { ground, gradeTan, crossfallTan } = room;
  const { normalX, normalY } = ground.bench;
  const { gradeMostDeg, crossfallMostDeg, slopeCheckDeg } = ground.settings;
  const grade = Math.tan(toRadians(gradeMostDeg));
  const crossfall = Math.tan(toRadians(crossfallMostDeg));
  const check = Math.tan(toRadians(slopeCheckDeg));
  let faults = 0;
  for (let i = scratch.firstElement; i <= scratch.lastElement; i++) {
    const g = gradeTan[i];
    const c = crossfallTan[i];
    const ahead = uy * normalX[i] - ux * normalY[i];
    const right = ux * normalX[i] + uy * normalY[i];
    const pitch = Math.abs(g * ahead - c * right);
    const roll = Math.abs(g * right + c * ahead);
    const worstGrade = Math.max(Math.abs(g), pitch);
    const worstCrossfall = Math.max(Math.abs(c), roll);
    if (!(worstGrade <= grade && worstCrossfall <= crossfall)) return FAULT.slope;
    if (worstGrade > check || worstCrossfall > check) faults = FAULT.slopeCheck;
  }
  return faults;
}

function around(room: StandingRoom, box: Box, hazards: readonly Hazard[], scratch: StandingScratch): number {
  let faults = 0;
  for (const hazard of hazards) {
    if (hazardHits(hazard, box)) {
      faults = FAULT.mark;
      break;
    }
  }
  if (!room.reachable[(scratch.firstElement + scratch.lastElement) >> 1]) faults |= FAULT.unreachable;
  if (room.freeAtEdge !== null && boxesMeet(room.freeAtEdge, box)) faults |= FAULT.edgeArea;
  return faults;
}
