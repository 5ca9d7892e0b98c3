/**
 * Least-squares slope of heights over distance, falling positive (tan): points from index `from` to `to`, both included.
 * Needs two points at different distances, else NaN.
 */
export function fallSlope(distanceM: ArrayLike<number>, heightM: ArrayLike<number>, from: number, to: number): number {
  const n = to - from + 1;
  let mx = 0;
  let mz = 0;
  for (let i = from; i <= to; i++) {
    mx += distanceM[i];
    mz += heightM[i];
  }
  mx /= n;
  mz /= n;
  let xx = 0;
  let xz = 0;
  for (let i = from; i <= to; i++) {
    const x = distanceM[i] - mx;
    xx += x * x;
    xz += x * (heightM[i] - mz);
  }
  return -xz / xx;
}
