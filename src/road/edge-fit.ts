import type { SideSign } from './edge-evidence.ts';
import { NO_EDGE } from './edge-path.ts';
import { lineFit, robustLine } from './robust-line.ts';
import { SECTION_STEP_M, type Sections } from './sections.ts';

/** The definition of the edge: bench line over the 5 m before, slope line over the 4 m after, the middle ± 0.5 m left out. */
const BENCH_LEG_M = 5;
const SLOPE_LEG_M = 4;
const LEFT_OUT_M = 0.5;
/** Cells over 1 m smear the corner farther: so much more is left out for a metre more of cell. */
const LEFT_OUT_PER_CELL = 0.75;
/** The fit may move the edge this far from the path. */
const MOST_MOVED_M = 1.5;
/** Lines that part less than this (tangent) meet nowhere that means anything. */
const LEAST_PARTING = 0.05;
const ROUNDS = 4;

/** What the fits found at each station; distances outward from the centre line in metres, slopes as tangents, up positive. */
export interface EdgeFits {
  /** Distance of the edge, NaN where there is none. */
  readonly edgeM: Float64Array;
  readonly heightM: Float64Array;
  readonly benchSlope: Float64Array;
  readonly outerSlope: Float64Array;
  /** Robust spread of the ground about the slope line, metres. */
  readonly spreadM: Float64Array;
}

/** Fits both lines at the path's edge of every station and intersects them, following the edge as it moves. */
export function fitEdges(
  { count, half, width }: Sections,
  z: Float64Array,
  side: SideSign,
  path: Int16Array,
  cellM: number,
): EdgeFits {
  const fits: EdgeFits = {
    edgeM: new Float64Array(count).fill(Number.NaN),
    heightM: new Float64Array(count).fill(Number.NaN),
    benchSlope: new Float64Array(count).fill(Number.NaN),
    outerSlope: new Float64Array(count).fill(Number.NaN),
    spreadM: new Float64Array(count).fill(Number.NaN),
  };
  const leftOut = LEFT_OUT_M + LEFT_OUT_PER_CELL * Math.max(0, cellM - 1);
  const capacity = Math.ceil(BENCH_LEG_M / SECTION_STEP_M) + 2;
  const t = new Float64Array(capacity);
  const h = new Float64Array(capacity);
  const bench = lineFit(capacity);
  const outer = lineFit(capacity);
  const gather = (middle: number, fromM: number, toM: number): number => {
    let n = 0;
    for (let j = Math.ceil(fromM / SECTION_STEP_M - 1e-9); j <= toM / SECTION_STEP_M + 1e-9; j++) {
      const height = z[middle + side * j]!;
      if (Number.isNaN(height) || Math.abs(j) > half) continue;
      t[n] = j * SECTION_STEP_M;
      h[n++] = height;
    }
    return n;
  };
  for (let i = 0; i < count; i++) {
    if (path[i] === NO_EDGE) continue;
    const middle = i * width + half;
    const start = path[i]! * SECTION_STEP_M;
    let edge = start;
    let before = start;
    for (let round = 0; round < ROUNDS; round++) {
      robustLine(t, h, null, gather(middle, edge - BENCH_LEG_M, edge - leftOut), bench);
      robustLine(t, h, null, gather(middle, edge + leftOut, edge + SLOPE_LEG_M), outer);
      const met = (bench.a - outer.a) / (outer.b - bench.b);
      if (!(Math.abs(outer.b - bench.b) > LEAST_PARTING)) break;
      before = edge;
      edge = Math.min(start + MOST_MOVED_M, Math.max(start - MOST_MOVED_M, met));
      if (Math.abs(edge - before) < 0.02) break;
    }
    // Windows hop by whole samples, so the last two rounds may swing about the answer.
    edge = (edge + before) / 2;
    fits.edgeM[i] = edge;
    fits.heightM[i] = bench.a + bench.b * edge;
    fits.benchSlope[i] = bench.b;
    fits.outerSlope[i] = outer.b;
    fits.spreadM[i] = outer.spread;
  }
  return fits;
}
