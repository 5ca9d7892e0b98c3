import { type Ground, heightAt, layerAt, SCREENING_CELL_M } from '../terrain/index.ts';
import { type DrawnFrame, offsetsAsDrawn } from './as-drawn.ts';
import { assumedBench } from './assumed-bench.ts';
import type { BenchInput } from './bench-input.ts';
import { benchNotes } from './bench-notes.ts';
import type { Bench, BenchSide } from './bench-types.ts';
import { withoutBumps } from './bumps.ts';
import type { CentreLine } from './centre-line.ts';
import { sectionReach } from './cut-rule.ts';
import type { SideSign } from './edge-evidence.ts';
import { KIND } from './edge-kind.ts';
import { evenness } from './evenness.ts';
import { findRoad } from './find-road.ts';
import { type FoundSide, findSide, type SideGround } from './find-side.ts';
import { crossfall, gradeAlong } from './grade.ts';
import { type Frame, obstacleFaces } from './obstacles.ts';
import { secondBench } from './second-bench.ts';
import { cutOff, cutSections, SECTION_STEP_M, type Sections } from './sections.ts';
import { slopeAbove } from './slope-above.ts';
import { pointsEveryMetre } from './stationed-line.ts';
import { bridgeTrenches, findStructures, roadProfile, UNDER } from './structures.ts';
import { trimBench } from './trim.ts';
import { usableOffsets } from './usable.ts';

/** Half length of a section, metres. */
const SECTION_HALF_M = 40;
/** Stations worked beyond each end of the stretch, so that its ends are filtered like its middle. */
const MARGIN = 20;
/** The noise that evidence is weighed by: a share of what the road itself shows, within bounds, metres. */
const NOISE_SHARE = 0.8;
const LEAST_NOISE_M = 0.05;
const MOST_NOISE_M = 0.15;

/**
 * The road bench at every whole metre from station `fromM` to `toM` (cut to where the line reaches): both ends, what they
 * are, how far people may stand, and what a study must say about it. Ground too coarse to show a bench gives one of
 * assumed width.
 */
export function findBench(input: BenchInput, fromM: number, toM: number): Bench {
  const { line } = input;
  const roadFrom = Math.ceil(line.stationM[0]!);
  const roadTo = Math.floor(line.stationM.at(-1)!);
  const first = Math.max(roadFrom, Math.ceil(fromM));
  const last = Math.min(roadTo, Math.floor(toM));
  const from = Math.max(roadFrom, first - MARGIN);
  const to = Math.min(roadTo, last + MARGIN);
  const count = to - from + 1;
  const drawn = drawnFrame(input, from, count);
  const ground = fineGround(input.ground);
  if (Number.isNaN(heightAt(ground, drawn.x[count >> 1], drawn.y[count >> 1]))) {
    const bench = trimBench(assumedBench(input, drawn, from), first - from, last - first + 1);
    return { ...bench, notes: benchNotes(bench, nothing(bench.count)) };
  }
  const cellM = ground.layers[layerAt(ground, drawn.x[count >> 1], drawn.y[count >> 1])].info.cellM;
  const centre = findRoad(ground, line, from, count, input.rest);
  const whole = cutSections(ground, centre, SECTION_HALF_M);
  const profile = roadProfile(whole);
  const under = findStructures(profile, from, input.structures);
  bridgeTrenches(whole, profile, under);
  blank(whole, under);
  const cut = cutOff(whole, sectionReach(centre, input.rest, SECTION_HALF_M));
  const smooth = withoutBumps(cut);
  const even = evenness({ ...cut, z: smooth }, 2 * 28, 2);
  const sideGround: SideGround = { whole, cut, smooth, even, noiseM: noiseOf(even), cellM };
  const shiftM = offsetsAsDrawn(drawn, centre, 0, null);
  const found = ([-1, 1] as const).map((side) => findSide(sideGround, side, medianFlags(input, side, from, count)));
  const sides = found.map((f, k) => assemble(input, f, k === 0 ? -1 : 1, drawn, centre, shiftM, whole));
  const bench = {
    firstStationM: from,
    count,
    how: 'computed' as const,
    rule: 'bench line of 5 m and slope line of 4 m intersected, one path along the road',
    ...{ x: drawn.x, y: drawn.y, normalX: drawn.nx, normalY: drawn.ny },
    left: sides[0]!,
    right: sides[1]!,
    shiftM,
    heightM: profile,
    gradeDeg: gradeAlong(profile, centre),
    crossfallDeg: crossfall({ ...cut, z: smooth }, found[0]!.edgeM, found[1]!.edgeM),
    under,
    notes: [],
  };
  const trimmed = trimBench(bench, first - from, last - first + 1);
  const second = secondBench(even);
  const part = (values: Float64Array): Float64Array => values.subarray(first - from, last - from + 1);
  const offsetM = part(second.offsetM.map((offset, i) => offset + shiftM[i]));
  return { ...trimmed, notes: benchNotes(trimmed, { offsetM, riseM: part(second.riseM) }) };
}

/** The layers whose cells are fine enough to show a bench. */
const fineGround = ({ plane, layers }: Ground): Ground => ({
  plane,
  layers: layers.filter(({ info }) => info.cellM <= SCREENING_CELL_M),
});

const nothing = (count: number) => ({
  offsetM: new Float64Array(count).fill(Number.NaN),
  riseM: new Float64Array(count).fill(Number.NaN),
});

function drawnFrame({ line }: BenchInput, from: number, count: number): DrawnFrame {
  const hx = new Float64Array(count + 1);
  const hy = new Float64Array(count + 1);
  pointsEveryMetre(line, from - 0.5, count + 1, hx, hy);
  const frame = {
    x: new Float64Array(count),
    y: new Float64Array(count),
    nx: new Float64Array(count),
    ny: new Float64Array(count),
  };
  pointsEveryMetre(line, from, count, frame.x, frame.y);
  for (let i = 0; i < count; i++) {
    const dx = hx[i + 1]! - hx[i]!;
    const dy = hy[i + 1]! - hy[i]!;
    const length = Math.hypot(dx, dy) || 1;
    frame.nx[i] = dy / length;
    frame.ny[i] = -dx / length;
  }
  return frame;
}

/** Sections under a structure show the ground below it, not the road. */
function blank({ width, z }: Sections, under: Uint8Array): void {
  under.forEach((u, i) => {
    if (u === UNDER.structure) z.fill(Number.NaN, i * width, (i + 1) * width);
  });
}

/** One sigma of the height error for weighing evidence: from the median unevenness of the road itself. */
function noiseOf({ rms, columns, count }: ReturnType<typeof evenness>): number {
  const own = Array.from({ length: count }, (_, i) => rms[i * columns + (columns - 1) / 2]!).filter((v) => v >= 0);
  own.sort((a, b) => a - b);
  return Math.min(MOST_NOISE_M, Math.max(LEAST_NOISE_M, NOISE_SHARE * (own[own.length >> 1] ?? 0)));
}

function medianFlags({ medians }: BenchInput, side: SideSign, from: number, count: number): Uint8Array {
  const flags = new Uint8Array(count);
  for (const { fromM, toM, side: on } of medians) {
    if (on === side) flags.fill(1, Math.max(0, Math.ceil(fromM) - from), Math.max(0, Math.floor(toM) - from + 1));
  }
  return flags;
}

function assemble(
  { obstacles, setbacks }: BenchInput,
  found: FoundSide,
  side: SideSign,
  drawn: DrawnFrame,
  centre: CentreLine,
  shiftM: Float64Array,
  whole: Sections,
): BenchSide {
  const count = centre.count;
  const frame: Frame = { ...drawn, shiftM };
  const usable = usableOffsets(
    {
      ...found,
      barrierM: obstacleFaces(frame, obstacles, 'barrier', side),
      wallM: obstacleFaces(frame, obstacles, 'wall', side),
    },
    setbacks,
  );
  const edgeOffsetM = offsetsAsDrawn(drawn, centre, side, found.edgeM);
  // What lies beside the edge is told by its distance from it, so that all offsets of a station share one crossing.
  const beside = (distanceM: Float64Array): Float64Array =>
    distanceM.map((d, i) => {
      const edge = found.edgeM[i]!;
      return Number.isNaN(edge) ? shiftM[i]! + side * d : edgeOffsetM[i]! - side * (edge - d);
    });
  return {
    edgeOffsetM,
    sigmaM: found.sigmaM,
    kind: found.kind,
    firmOffsetM: beside(found.firmM),
    usableOffsetM: beside(usable),
    lipOffsetM: beside(found.lipM),
    edgeX: edgeOffsetM.map((o, i) => drawn.x[i]! + o * drawn.nx[i]!),
    edgeY: edgeOffsetM.map((o, i) => drawn.y[i]! + o * drawn.ny[i]!),
    edgeHeightM: found.heightM,
    outerSlope: found.outerSlope,
    bankM: found.bankM,
    fallM: found.fallM,
    above: Array.from({ length: count }, (_, i) =>
      found.kind[i] === KIND.rise
        ? slopeAbove(whole, side, i, Math.round(found.edgeM[i]! / SECTION_STEP_M) * SECTION_STEP_M)
        : null,
    ),
  };
}
