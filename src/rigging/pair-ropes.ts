/**
 * Whether every need, metres, longest first, can be met by one rope or by two joined ones, each rope used once. Tries the
 * shortest single rope that does and every pair of different lengths; the lists are a handful long.
 *
 * @param ropesM longest first
 * @param joinTakesM rope that the joining knot takes
 */
export function pairRopes(needsM: readonly number[], ropesM: readonly number[], joinTakesM: number): boolean {
  if (needsM.length === 0) return true;
  const needM = needsM[0]! - 1e-9;
  const rest = needsM.slice(1);
  const without = (...taken: number[]): number[] => ropesM.filter((_, i) => !taken.includes(i));
  let single = -1;
  for (let i = 0; i < ropesM.length; i++) if (ropesM[i]! >= needM) single = i;
  if (single >= 0 && pairRopes(rest, without(single), joinTakesM)) return true;
  for (let i = 0; i < ropesM.length; i++) {
    if (i > 0 && ropesM[i] === ropesM[i - 1]) continue;
    for (let j = i + 1; j < ropesM.length; j++) {
      if (j > i + 1 && ropesM[j] === ropesM[j - 1]) continue;
      if (ropesM[i]! + ropesM[j]! - joinTakesM < needM) break;
      if (pairRopes(rest, without(i, j), joinTakesM)) return true;
    }
  }
  return false;
}
