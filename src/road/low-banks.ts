import { benchPlane, PLANE_HALF } from './bench-plane.ts';
import type { SideSign } from './edge-evidence.ts';
import { isDrop, KIND, keepRuns } from './edge-kind.ts';
import { SECTION_STEP_M, type Sections } from './sections.ts';

/** A bank of up to this height and width between the road and falling ground is part of the edge, metres. */
const BANK_HEIGHT_M = 1.2;
const BANK_WIDTH_M = 5;
const LOOK_M = 20;
/** The slope beyond is taken over this much ground, metres. */
const SLOPE_M = 4;

/** Drops behind low banks: where the ground comes back to the level of the bench beyond the bank, metres outward. */
export interface LowBanks {
  /** NaN where there is no such thing. */
  readonly edgeM: Float64Array;
  readonly fallM: Float64Array;
  readonly slope: Float64Array;
  /** Height of the bank over the bench, metres. */
  readonly bankM: Float64Array;
}

/**
 * Windrows and low banks that stand between a bench and a drop: the end told there is the bank's foot (`toeM`), but what
 * a crew works over is the drop behind it. As many stations must agree as for any drop.
 *
 *             bank
 *     foot  ╱╲
 *     ─────╱  ╲ edge, level with the bench
 *                ╲
 */
export function findLowBanks(
  { count, half, width, z }: Sections,
  side: SideSign,
  toeM: Float64Array,
  heightM: Float64Array,
  kind: Uint8Array,
): LowBanks {
  const nan = (): Float64Array => new Float64Array(count).fill(Number.NaN);
  const banks = { edgeM: nan(), fallM: nan(), slope: nan(), bankM: nan() };
  const agrees = new Uint8Array(count);
  for (let i = 0; i < count; i++) {
    if (kind[i] !== KIND.rise) continue;
    const middle = i * width + half;
    const level = heightM[i];
    const toe = toeM[i];
    let bank = 0;
    let edge = Number.NaN;
    let deepest = 0;
    const last = Math.min(half, Math.floor((toe + BANK_WIDTH_M + LOOK_M) / SECTION_STEP_M));
    for (let j = Math.ceil(toe / SECTION_STEP_M); j <= last; j++) {
      const fall = level - z[middle + side * j];
      const out = j * SECTION_STEP_M;
      if (Number.isNaN(fall) || -fall > BANK_HEIGHT_M) break;
      if (Number.isNaN(edge)) {
        bank = Math.max(bank, -fall);
        if (out - toe > BANK_WIDTH_M) break;
        if (fall >= 0 && bank > 0) {
          const before = level - z[middle + side * (j - 1)];
          edge = out - (SECTION_STEP_M * fall) / (fall - before);
        }
        continue;
      }
      deepest = Math.max(deepest, fall);
      if (isDrop(fall, out - edge)) agrees[i] = 1;
    }
    if (!agrees[i]) continue;
    const beyond = Math.round((edge + SLOPE_M) / SECTION_STEP_M);
    banks.edgeM[i] = edge;
    banks.fallM[i] = deepest;
    banks.bankM[i] = bank;
    banks.slope[i] = (z[middle + side * beyond] - level) / (beyond * SECTION_STEP_M - edge);
  }
  keepRuns(agrees);
  for (let i = 0; i < count; i++) if (!agrees[i]) banks.edgeM[i] = Number.NaN;
  return banks;
}

/** A bank higher than a berm stands on the bench; its foot is where it first stands this much over the plane, metres. */
const BERM_M = 0.65;
const FOOT_M = 0.15;

/** Feet and heights of banks that stand inside a falling edge, metres outward and metres; NaN where there is none. */
export function findInnerBanks(
  { count, half, width, z }: Sections,
  side: SideSign,
  edgeM: Float64Array,
  kind: Uint8Array,
): { footM: Float64Array; bankM: Float64Array } {
  const footM = new Float64Array(count).fill(Number.NaN);
  const bankM = new Float64Array(count).fill(Number.NaN);
  for (let i = 0; i < count; i++) {
    if (kind[i] !== KIND.drop && kind[i] !== KIND.bank) continue;
    const middle = i * width + half;
    const { level, slope } = benchPlane(z, middle, side);
    let foot = Number.NaN;
    for (let j = PLANE_HALF; j <= edgeM[i] / SECTION_STEP_M; j++) {
      const over = z[middle + side * j] - level - slope * j;
      if (over < FOOT_M) foot = Number.NaN;
      else if (Number.isNaN(foot)) foot = j * SECTION_STEP_M;
      if (over > BERM_M && !(bankM[i] > over)) {
        bankM[i] = over;
        footM[i] = foot;
      }
    }
  }
  return { footM, bankM };
}
