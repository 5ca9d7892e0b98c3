import { benchPlane, PLANE_HALF } from './bench-plane.ts';
import type { SideSign } from './edge-evidence.ts';
import { KIND } from './edge-kind.ts';
import { SECTION_STEP_M, type Sections } from './sections.ts';

/** Setbacks of the usable edge, metres (common practice, no source; settings of the book). */
export interface Setbacks {
  /** From an edge where the ground falls, for people and ropes. */
  readonly edgeM: number;
  /** From the toe of a cut or a wall that rises. */
  readonly toeM: number;
  /** From the inside face of a barrier. */
  readonly barrierM: number;
}

export const defaultSetbacks: Setbacks = { edgeM: 1, toeM: 0.5, barrierM: 0.5 };

/** A ditch is told where the ground lies this far under the plane of the bench over this width, or that deep at once, metres … */
const DITCH_DEPTH_M = 0.25;
const DITCH_WIDTH_M = 2.5;
const DEEP_M = 0.65;
/** … and the lip stands where it first falls under it by this. */
const LIP_DEPTH_M = 0.1;

/**
 * Near lip of a ditch between the road and the toe of a cut, metres outward; NaN where there is none; a narrow
 * shallow one is crossed.
 */
export function ditchLips(
  { count, half, width, z }: Sections,
  side: SideSign,
  toeM: Float64Array,
  kind: Uint8Array,
): Float64Array {
  const lip = new Float64Array(count).fill(Number.NaN);
  for (let i = 0; i < count; i++) {
    if (kind[i] !== KIND.rise) continue;
    const middle = i * width + half;
    const { level, slope } = benchPlane(z, middle, side);
    let start = -1;
    let deepest = 0;
    for (let j = PLANE_HALF - 1; j <= toeM[i]! / SECTION_STEP_M; j++) {
      const under = level + slope * j - z[middle + side * j]!;
      if (under < LIP_DEPTH_M) {
        start = -1;
        deepest = 0;
        continue;
      }
      if (start < 0) start = j;
      deepest = Math.max(deepest, under);
      const wide = (j - start) * SECTION_STEP_M >= DITCH_WIDTH_M;
      if ((deepest > DITCH_DEPTH_M && wide) || deepest > DEEP_M) {
        lip[i] = start * SECTION_STEP_M;
        break;
      }
    }
  }
  return lip;
}

/**
 * How far people may stand out at each station on one side, metres outward from the centre line and never under 0: the
 * edge less its setback, the lip of a ditch, the toe of a cut or of a low bank at the edge less its own, a barrier's face less its own, whichever comes
 * first. On level ground without an edge it is `levelM` less the toe setback. Near a jump of the edge the inner one counts.
 */
export function usableOffsets(
  side: {
    readonly edgeM: Float64Array;
    readonly kind: Uint8Array;
    readonly ditch: Uint8Array;
    readonly lipM: Float64Array;
    readonly footM: Float64Array;
    readonly levelM: Float64Array;
    readonly barrierM: Float64Array;
    readonly wallM: Float64Array;
  },
  setbacks: Setbacks,
): Float64Array {
  const { edgeM, kind, ditch, lipM, footM, levelM, barrierM, wallM } = side;
  const count = edgeM.length;
  const single = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    const rises = kind[i] === KIND.rise;
    let out = levelM[i]! - setbacks.toeM;
    if (rises && !ditch[i]) out = edgeM[i]! - setbacks.toeM;
    else if (kind[i] !== KIND.none) out = ditch[i] ? edgeM[i]! : edgeM[i]! - setbacks.edgeM;
    if (lipM[i]! < out) out = lipM[i]!;
    if (footM[i]! - setbacks.toeM < out) out = footM[i]! - setbacks.toeM;
    if (barrierM[i]! - setbacks.barrierM < out) out = barrierM[i]! - setbacks.barrierM;
    const wallSetback = rises ? setbacks.toeM : setbacks.edgeM;
    if (wallM[i]! - wallSetback < out) out = wallM[i]! - wallSetback;
    single[i] = Math.max(0, out);
  }
  return innerNearJumps(single, edgeM);
}

/** Stations within this of a jump of the edge take the inner side of it, so that nobody stands where a track leaves. */
const JUMP_NEAR = 3;
const JUMP_M = 2;

function innerNearJumps(usable: Float64Array, edgeM: Float64Array): Float64Array {
  const out = usable.slice();
  for (let i = 1; i < usable.length; i++) {
    if (!(Math.abs(edgeM[i]! - edgeM[i - 1]!) > JUMP_M)) continue;
    const from = Math.max(0, i - JUMP_NEAR);
    const to = Math.min(usable.length, i + JUMP_NEAR);
    const inner = Math.min(...usable.subarray(from, to));
    for (let k = from; k < to; k++) out[k] = Math.min(out[k]!, inner);
  }
  return out;
}
