import type { SideSign } from './edge-evidence.ts';
import { SECTION_STEP_M, type Sections } from './sections.ts';

/** What the end of the bench is. A bank falls too little to be a drop; a rise is a cut; none is level ground. */
export const EDGE_KINDS = ['none', 'drop', 'bank', 'rise'] as const;
export type EdgeKind = (typeof EDGE_KINDS)[number];
export const KIND = { none: 0, drop: 1, bank: 2, rise: 3 } as const;

/** How far beyond the edge the fall is looked for, metres. */
const LOOK_M = 20;
/** A drop falls by 25 % and 2 m, or by 40 % and 1.2 m … */
const DROPS = [
  { slope: 0.25, fallM: 2 },
  { slope: 0.4, fallM: 1.2 },
] as const;
/** … at about ten stations that agree (eight do), with gaps of up to three between them. */
const AGREE = 8;
const AGREE_GAP = 3;
/** Shortest run over which the mean fall is taken, metres. */
const LEAST_RUN_M = 2;
/** A hollow that comes back to within this of the edge's height inside 10 m is a ditch, unless it is deep enough for a drop. */
const DITCH_BACK_M = 0.3;
const DITCH_WIDTH_M = 10;
const DITCH_DEPTH_M = 1.2;
/** A bank of up to this beside the road may hide a drop behind it, metres. */
const LOW_BANK_M = 2.5;
/** Ground that stands higher than a berm within this of the edge is a rise, whatever it does behind, metres. */
const BANK_SEEN_M = 4;
const BERM_M = 0.65;
/** A ditch runs along a cut where the ground stands this much over the bench within this beyond it, metres. */
const DITCH_SEEN_M = 3;
const CUT_M = 0.5;
/** On a median, only a drop of this counts. */
const MEDIAN_FALL_M = 2;

/** What lies beyond the edge of each station. */
export interface BeyondEdge {
  /** Values of `KIND`. */
  readonly kind: Uint8Array;
  /** Deepest fall within 20 m of the edge, metres; on a rise that of a drop behind a low bank, else 0. */
  readonly fallM: Float64Array;
  /** 1 where a ditch lies between the bench and what rises or runs level beyond it. */
  readonly ditch: Uint8Array;
}

/**
 * Tells drops from banks, rises and ditches. `sections` are whole ones, so that a lower leg of the road counts as ground
 * that falls away; `slope` is the slope line's tangent, up positive; `median` marks stations whose side is a median.
 */
export function tellKinds(
  { count, half, width, z }: Sections,
  side: SideSign,
  edgeM: Float64Array,
  heightM: Float64Array,
  slope: Float64Array,
  median: Uint8Array,
): BeyondEdge {
  const kind = new Uint8Array(count);
  const fallM = new Float64Array(count).fill(Number.NaN);
  const ditch = new Uint8Array(count);
  const agrees = new Uint8Array(count);
  for (let i = 0; i < count; i++) {
    const edge = edgeM[i]!;
    if (Number.isNaN(edge)) continue;
    const middle = i * width + half;
    if (slope[i]! > 0 || risesBy(z, middle, side, half, edge, BANK_SEEN_M) > BERM_M + heightM[i]!) {
      kind[i] = KIND.rise;
      fallM[i] = fallBehindBank(z, middle, side, half, edge, heightM[i]!);
      continue;
    }
    kind[i] = KIND.bank;
    const from = Math.ceil(edge / SECTION_STEP_M);
    const to = Math.min(half, Math.floor((edge + LOOK_M) / SECTION_STEP_M));
    let deepest = 0;
    let drops = false;
    let back = Number.NaN;
    let deepestBefore = 0;
    for (let j = from; j <= to; j++) {
      const fall = heightM[i]! - z[middle + side * j]!;
      if (Number.isNaN(fall)) break;
      const run = j * SECTION_STEP_M - edge;
      if (fall > deepest) deepest = fall;
      if (Number.isNaN(back) && deepest > DITCH_BACK_M && fall < DITCH_BACK_M && run <= DITCH_WIDTH_M) {
        back = run;
        deepestBefore = deepest;
      }
      if (isDrop(fall, run)) drops = true;
    }
    fallM[i] = deepest;
    for (const rule of DROPS) if (-slope[i]! >= rule.slope && deepest >= rule.fallM) drops = true;
    if (!Number.isNaN(back) && deepestBefore < DITCH_DEPTH_M) {
      ditch[i] = 1;
      drops = false;
      if (risesBy(z, middle, side, half, edge + back, DITCH_SEEN_M) > CUT_M + heightM[i]!) {
        kind[i] = KIND.rise;
        fallM[i] = 0;
      }
    }
    if (median[i] && deepest < MEDIAN_FALL_M) drops = false;
    agrees[i] = drops ? 1 : 0;
  }
  keepRuns(agrees);
  for (let i = 0; i < count; i++) if (agrees[i] && kind[i] === KIND.bank) kind[i] = KIND.drop;
  return { kind, fallM, ditch };
}

/** Deepest fall below the road within 20 m where no more than a low bank stands before it, metres; 0 otherwise. */
function fallBehindBank(
  z: Float64Array,
  middle: number,
  side: SideSign,
  half: number,
  edge: number,
  level: number,
): number {
  const last = Math.min(half, Math.floor((edge + LOOK_M) / SECTION_STEP_M));
  let deepest = 0;
  let drops = false;
  for (let j = Math.ceil(edge / SECTION_STEP_M); j <= last; j++) {
    const fall = level - z[middle + side * j]!;
    if (Number.isNaN(fall) || -fall > LOW_BANK_M) break;
    deepest = Math.max(deepest, fall);
    if (isDrop(fall, j * SECTION_STEP_M - edge)) drops = true;
  }
  return drops ? deepest : 0;
}

/** True where a fall over a run is a drop's. */
export const isDrop = (fallM: number, runM: number): boolean =>
  runM >= LEAST_RUN_M && DROPS.some((rule) => fallM >= rule.fallM && fallM >= rule.slope * runM);

/** Highest ground within `overM` beyond a distance, metres; −∞ where there is none. */
function risesBy(z: Float64Array, middle: number, side: SideSign, half: number, fromM: number, overM: number): number {
  const last = Math.min(half, Math.ceil((fromM + overM) / SECTION_STEP_M));
  let most = Number.NEGATIVE_INFINITY;
  for (let j = Math.floor(fromM / SECTION_STEP_M); j <= last; j++) most = Math.max(most, z[middle + side * j]!);
  return most;
}

/** Keeps runs in which enough stations agree, with gaps of up to three inside them; a run cut by an end needs half as many. */
export function keepRuns(flags: Uint8Array): void {
  const count = flags.length;
  for (let i = 0; i < count; ) {
    if (!flags[i]) {
      i++;
      continue;
    }
    let end = i;
    let agree = 0;
    for (let j = i; j < count && j - end <= AGREE_GAP; j++) {
      if (!flags[j]) continue;
      agree++;
      end = j;
    }
    const atEnd = i === 0 || end === count - 1;
    flags.fill(agree >= (atEnd ? AGREE / 2 : AGREE) ? 1 : 0, i, end + 1);
    i = end + 1;
  }
}
