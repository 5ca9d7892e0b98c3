import { benchReach } from './bench-reach.ts';
import { BENCH_SLOPE, edgeEvidence, type SideSign } from './edge-evidence.ts';
import { filterEdges, medianAlong, piecesBetweenJumps } from './edge-filter.ts';
import { fitEdges } from './edge-fit.ts';
import { KIND, tellKinds } from './edge-kind.ts';
import { edgePath } from './edge-path.ts';
import { edgeSigma } from './edge-sigma.ts';
import type { Evenness } from './evenness.ts';
import { findFirmEdges } from './firm-edge.ts';
import { findInnerBanks, findLowBanks } from './low-banks.ts';
import { SECTION_STEP_M, type Sections } from './sections.ts';
import { ditchLips } from './usable.ts';

/** Farthest edge that is looked for, metres from the middle: a deep turnout. */
const FARTHEST_M = 28;
/** Level ground beside the road counts this far where no edge is found, and while it stays this near the bench's plane. */
const LEVEL_M = 10;
const LEVEL_STEP_M = 0.5;
/** Samples of the bench line before the edge. */
const BENCH_LEG = 10;

/** One side of the bench in its own frame: distances outward from the centre line, metres; slopes as tangents, up positive. */
export interface FoundSide {
  readonly edgeM: Float64Array;
  readonly firmM: Float64Array;
  readonly lipM: Float64Array;
  /** Inner foot of a low bank between the bench and its edge, and the bank's height; NaN where there is none. */
  readonly footM: Float64Array;
  readonly bankM: Float64Array;
  readonly levelM: Float64Array;
  readonly sigmaM: Float64Array;
  readonly heightM: Float64Array;
  /** Values of `KIND`. */
  readonly kind: Uint8Array;
  readonly fallM: Float64Array;
  readonly ditch: Uint8Array;
  readonly benchSlope: Float64Array;
  readonly outerSlope: Float64Array;
}

/** What the sides are found in: whole sections, the same cut off, and cut off without bumps. */
export interface SideGround {
  readonly whole: Sections;
  readonly cut: Sections;
  readonly smooth: Float64Array;
  readonly even: Evenness;
  readonly noiseM: number;
  readonly cellM: number;
}

/** Finds the end of the bench on one side of every station. `median` marks stations where that side is a median. */
export function findSide(ground: SideGround, side: SideSign, median: Uint8Array): FoundSide {
  const { whole, cut, smooth, even, noiseM, cellM } = ground;
  const states = Math.min(FARTHEST_M / SECTION_STEP_M, cut.half);
  const evidence = edgeEvidence(cut, smooth, side, noiseM, benchReach(even, side), states);
  const path = edgePath(evidence, cut.count);
  const fits = fitEdges(cut, smooth, side, path, cellM);
  const piece = piecesBetweenJumps(path);
  const { edgeM: single, scatterM } = filterEdges(fits.edgeM, piece);
  const benchSlope = medianAlong(fits.benchSlope, piece);
  const outerSlope = medianAlong(fits.outerSlope, piece);
  const height = single.map((edge, i) => fits.heightM[i]! + fits.benchSlope[i]! * (edge - fits.edgeM[i]!));
  const { kind, fallM, ditch } = tellKinds(whole, side, single, height, outerSlope, median);
  const { edgeM, heightM, firmM } = findFirmEdges({ ...cut, z: smooth }, side, single, height, piece, kind);
  const banks = findLowBanks(whole, side, edgeM, heightM, kind);
  const bankEdge = medianAlong(banks.edgeM, piece);
  const { footM, bankM } = findInnerBanks(cut, side, edgeM, kind);
  for (let i = 0; i < cut.count; i++) {
    if (Number.isNaN(banks.edgeM[i])) continue;
    footM[i] = edgeM[i];
    bankM[i] = banks.bankM[i];
    edgeM[i] = bankEdge[i];
    kind[i] = KIND.drop;
    fallM[i] = banks.fallM[i];
    outerSlope[i] = banks.slope[i];
  }
  const spreadM = medianAlong(fits.spreadM, piece);
  const bumpM = bumpsInside(cut, smooth, side, edgeM);
  const parting = outerSlope.map((slope, i) => Math.abs(slope - benchSlope[i]!));
  return {
    edgeM,
    firmM,
    heightM,
    kind,
    fallM,
    ditch,
    benchSlope,
    outerSlope,
    lipM: ditchLips(cut, side, edgeM, kind),
    levelM: levelReach(cut, smooth, side),
    footM,
    bankM,
    sigmaM: edgeSigma({ edgeM, scatterM, parting, spreadM, bumpM, footM, kind }, noiseM, cellM),
  };
}

/** Highest bump that was taken out within 5 m inside the edge of each station, metres. */
function bumpsInside(
  { count, half, width, z }: Sections,
  smooth: Float64Array,
  side: SideSign,
  edgeM: Float64Array,
): Float64Array {
  const out = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    const last = Math.floor(edgeM[i] / SECTION_STEP_M);
    for (let j = last - BENCH_LEG; j <= last; j++) {
      const at = i * width + half + side * j;
      out[i] = Math.max(out[i], Math.abs(z[at] - smooth[at]) || 0);
    }
  }
  return out;
}

/** How far the ground stays level with the road, metres outward, at most 10 m. */
function levelReach({ count, half, width }: Sections, z: Float64Array, side: SideSign): Float64Array {
  const out = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    const middle = i * width + half;
    let j = 2;
    for (; j < LEVEL_M / SECTION_STEP_M; j++) {
      const slope = (z[middle + side * (j + 1)]! - z[middle + side * (j - 1)]!) / (2 * SECTION_STEP_M);
      if (!(Math.abs(slope) <= 2 * BENCH_SLOPE)) break;
      if (!(Math.abs(z[middle + side * j]! - z[middle]!) <= LEVEL_STEP_M + BENCH_SLOPE * j * SECTION_STEP_M)) break;
    }
    out[i] = j * SECTION_STEP_M;
  }
  return out;
}
