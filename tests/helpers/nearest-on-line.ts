/** Nearest point of a fine polyline: distance along it (s) and signed distance from it, positive to the right (q). */
export function nearestFinder(px: Float64Array, py: Float64Array, FINE_M: number, firstM: number) {
  const cell = 8;
  const buckets = new Map<number, number[]>();
  const key = (i: number, j: number): number => (i + 500) * 1000 + j + 500;
  for (let i = 0; i < px.length; i += 4) {
    const k = key(Math.floor(px[i]! / cell), Math.floor(py[i]! / cell));
    const list = buckets.get(k);
    if (list) list.push(i);
    else buckets.set(k, [i]);
  }
  return (x: number, y: number): { s: number; q: number } => {
    const bi = Math.floor(x / cell);
    const bj = Math.floor(y / cell);
    let best = Number.POSITIVE_INFINITY;
    let at = 0;
    for (let ring = 0; ring < 14 && (ring - 1) * cell <= Math.sqrt(best); ring++) {
      for (let i = bi - ring; i <= bi + ring; i++) {
        for (let j = bj - ring; j <= bj + ring; j++) {
          if (Math.max(Math.abs(i - bi), Math.abs(j - bj)) !== ring) continue;
          for (const k of buckets.get(key(i, j)) ?? []) {
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
