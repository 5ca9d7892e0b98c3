import { BENCH_SLOPE, type SideSign } from './edge-evidence.ts';
import { KIND } from './edge-kind.ts';
import { edgeProfile } from './edge-profile.ts';
import { lineFit, robustLine } from './robust-line.ts';
import { SECTION_STEP_M, type Sections } from './sections.ts';

/** On a sharp edge 12 % is passed up to this far inside it (1 m cells smear the corner): more is a soft shoulder. */
const SOFT_FROM_M = 1.2;
const INWARD_M = 7;
const OUTWARD_M = 5;
/** Slope that a soft shoulder stays under, tangent; steeper ground already is the slope. */
const SOFT_SLOPE = 0.25;
/** A shoulder whose outer half is this much steeper than its inner half is a rounded corner, tangent. */
const ROUNDED_BY = 0.08;

/** Outer and inner end of a bench with a soft shoulder; both the same where the edge is sharp. */
export interface FirmEdges {
  /** Edge where the steep begins, metres outward from the centre line. */
  readonly edgeM: Float64Array;
  readonly heightM: Float64Array;
  /** Where 12 % across the road is passed, metres outward. */
  readonly firmM: Float64Array;
}

/**
 * Finds soft shoulders: where the slope passes 12 % more than 1.2 m inside the edge, the firm edge is told there; where it
 * stays gentle in between, the edge is moved to where the steep begins.
 *
 *     ──────firm
 *               ╲___  12–20 %
 *                    edge
 *                       ╲   steep
 */
export function findFirmEdges(
  sections: Sections,
  side: SideSign,
  edgeM: Float64Array,
  heightM: Float64Array,
  piece: Int16Array,
  kind: Uint8Array,
): FirmEdges {
  const count = edgeM.length;
  const out = { edgeM: edgeM.slice(), heightM: heightM.slice(), firmM: edgeM.slice() };
  const profile = new Float64Array((INWARD_M + OUTWARD_M) / SECTION_STEP_M + 1);
  const middle = INWARD_M / SECTION_STEP_M;
  const fit = lineFit(profile.length);
  const t = new Float64Array(profile.length);
  const h = new Float64Array(profile.length);
  const line = (from: number, to: number): boolean => {
    let n = 0;
    for (let k = Math.max(0, from); k <= Math.min(profile.length - 1, to); k++) {
      if (Number.isNaN(profile[k]!)) continue;
      t[n] = (k - middle) * SECTION_STEP_M;
      h[n++] = profile[k]!;
    }
    robustLine(t, h, null, n, fit);
    return n >= 3;
  };
  for (let i = 0; i < count; i++) {
    if (kind[i] !== KIND.drop && kind[i] !== KIND.bank) continue;
    edgeProfile(sections, side, edgeM, heightM, piece, i, INWARD_M, profile);
    // Walk inward from the edge until a metre of ground lies under the limit.
    let k = middle;
    while (k > 2 && profile[k - 2]! - profile[k]! > BENCH_SLOPE * 2 * SECTION_STEP_M) k--;
    const firm = (k - 1 - middle) * SECTION_STEP_M;
    if (!(firm < -SOFT_FROM_M)) continue;
    out.firmM[i] = edgeM[i]! + firm;
    // A shoulder is straight; a rounded corner steepens all the way and keeps the edge that its lines give.
    const half = (k + middle - 1) >> 1;
    if (!line(k, half)) continue;
    const inner = fit.b;
    if (!line(half, middle - 1) || fit.b < inner - ROUNDED_BY) continue;
    // The steep begins where the shoulder line meets the line of the ground beyond.
    if (!line(k, middle - 1) || !(fit.b < 0 && fit.b > -SOFT_SLOPE)) continue;
    const shoulder = { a: fit.a, b: fit.b };
    if (!line(middle + 2, profile.length - 1) || !(fit.b < -SOFT_SLOPE)) continue;
    const met = (shoulder.a - fit.a) / (fit.b - shoulder.b);
    if (!(met > -SOFT_FROM_M && met < OUTWARD_M / 2)) continue;
    out.edgeM[i] = edgeM[i]! + met;
    out.heightM[i] = heightM[i]! + shoulder.a + shoulder.b * met;
  }
  return out;
}
