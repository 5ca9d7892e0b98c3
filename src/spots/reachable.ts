import { type Bench, edgeKindAt, UNDER } from '../road/index.ts';
import type { SpotSettings } from './spot-settings.ts';

/**
 * Flags the elements of the bench that an apparatus can drive to along the road from one of its ends: up to there the bench
 * is wider than the apparatus by the spare width that passing takes. Structures carry the road; a stretch without ground
 * stops it.
 */
export function reachableElements(
  bench: Bench,
  { widthM }: { readonly widthM: number },
  { passingM }: Pick<SpotSettings, 'passingM'>,
): Uint8Array {
  const { count } = bench;
  const flags = new Uint8Array(count);
  const open = (i: number): boolean => bench.under[i] === UNDER.structure || clearWidthM(bench, i) >= widthM + passingM;
  for (let i = 0; i < count && open(i); i++) flags[i] = 1;
  for (let i = count - 1; i >= 0 && open(i); i--) flags[i] = 1;
  return flags;
}

/** Width of the bench end to end, on level ground as far as it was seen to be level, metres; NaN where unknown. */
function clearWidthM({ left, right }: Bench, i: number): number {
  const leftM = edgeKindAt(left, i) === 'none' ? left.usableOffsetM[i] : left.edgeOffsetM[i];
  const rightM = edgeKindAt(right, i) === 'none' ? right.usableOffsetM[i] : right.edgeOffsetM[i];
  return rightM - leftM;
}
