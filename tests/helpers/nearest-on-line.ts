/** Nearest point of a fine polyline: distance along it (s) and signed distance from it, positive to the right (q). */
export function nearestFinder(px: Float64Array, py: Float64Array, FINE_M: number, firstM: number) {
  const cell = 8;
  const bins = (p: Float64Array): Int32Array => Int32Array.from(p, (at) => Math.floor(at / cell));
  const [binX, binY] = [bins(px), bins(py)];
  const [left, right] = [Math.min(...binX), Math.max(...binX)];
  const [low, high] = [Math.min(...binY), Math.max(...binY)];
  const tall = high - low + 1;
  const buckets: number[][] = Array.from({ length: (right - left + 1) * tall }, () => []);
  for (let i = 0; i < px.length; i += 4) buckets[(binX[i]! - left) * tall + binY[i]! - low]!.push(i);
  return (x: number, y: number): { s: number; q: number } => {
    const bi = Math.floor(x / cell);
    const bj = Math.floor(y / cell);
    let best = Number.POSITIVE_INFINITY;
    let at = 0;
    for (let ring = 0; ring < 14 && (ring - 1) * cell <= Math.sqrt(best); ring++) {
      for (let i = Math.max(left, bi - ring); i <= Math.min(right, bi + ring); i++) {
        // Along the ring's first and last column every cell, between them its two ends.
        const step = Math.abs(i - bi) === ring ? 1 : 2 * ring;
        for (let j = bj - ring; j <= bj + ring; j += step) {
          if (j < low || j > high) continue;
          for (const k of buckets[(i - left) * tall + j - low]!) {
            const d = (px[k]! - x) ** 2 + (py[k]! - y) ** 2;
            if (d < best) [best, at] = [d, k];
          }
        }
      }
    }
    for (let k = Math.max(0, at - 5); k <= Math.min(px.length - 1, at + 5); k++) {
      const d = (px[k]! - x) ** 2 + (py[k]! - y) ** 2;
      if (d < best) [best, at] = [d, k];
    }
    const k = Math.min(px.length - 2, Math.max(1, at));
    const [tx, ty] = [(px[k + 1]! - px[k - 1]!) / (2 * FINE_M), (py[k + 1]! - py[k - 1]!) / (2 * FINE_M)];
    const [dx, dy] = [x - px[k]!, y - py[k]!];
    return { s: k * FINE_M + firstM + dx * tx + dy * ty, q: dx * ty - dy * tx };
  };
}
