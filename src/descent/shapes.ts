/** Distance from a point to a line of x, y pairs, metres; a single point counts as a line. */
export function distanceToLine(line: Float64Array, x: number, y: number): number {
  let best = (x - line[0]) ** 2 + (y - line[1]) ** 2;
  for (let i = 0; i + 3 < line.length; i += 2) {
    const ax = line[i];
    const ay = line[i + 1];
    const bx = line[i + 2] - ax;
    const by = line[i + 3] - ay;
    const length2 = bx * bx + by * by;
    const t = length2 > 0 ? Math.min(1, Math.max(0, ((x - ax) * bx + (y - ay) * by) / length2)) : 0;
    best = Math.min(best, (x - ax - t * bx) ** 2 + (y - ay - t * by) ** 2);
  }
  return Math.sqrt(best);
}

/** True where a point lies no farther than `mostM` from a line: `distanceToLine`, but told as soon as one piece is that near. */
export function withinOfLine(line: Float64Array, x: number, y: number, mostM: number): boolean {
  if (Math.hypot(x - line[0], y - line[1]) <= mostM) return true;
  for (let i = 0; i + 3 < line.length; i += 2) {
    const ax = line[i];
    const ay = line[i + 1];
    const bx = line[i + 2] - ax;
    const by = line[i + 3] - ay;
    const length2 = bx * bx + by * by;
    const t = length2 > 0 ? Math.min(1, Math.max(0, ((x - ax) * bx + (y - ay) * by) / length2)) : 0;
    const dx = x - ax - t * bx;
    const dy = y - ay - t * by;
    // Most pieces lie farther off in x or y alone.
    if (!(Math.abs(dx) > mostM || Math.abs(dy) > mostM) && Math.hypot(dx, dy) <= mostM) return true;
  }
  return false;
}

/** True inside a ring of x, y pairs by its winding number, so that a ring that overlaps itself has no hole there. */
export function insideRing(ring: Float64Array, x: number, y: number): boolean {
  const n = ring.length / 2;
  let winding = 0;
  for (let i = 0, j = n - 1; i < n; j = i++) {
    const ax = ring[2 * j];
    const ay = ring[2 * j + 1];
    const bx = ring[2 * i];
    const by = ring[2 * i + 1];
    if (ay <= y === by <= y) continue;
    const left = (bx - ax) * (y - ay) - (x - ax) * (by - ay);
    if (by > ay && left > 0) winding++;
    else if (by < ay && left < 0) winding--;
  }
  return winding !== 0;
}

/**
 * Where the segment a to b meets a line: shares of the segment in [0, 1], ascending. Segments that lie along each other
 * do not meet.
 */
export function segmentMeets(line: Float64Array, ax: number, ay: number, bx: number, by: number): number[] {
  const meets: number[] = [];
  for (let i = 0; i + 3 < line.length; i += 2) {
    const dx = line[i + 2] - line[i];
    const dy = line[i + 3] - line[i + 1];
    const cross = (bx - ax) * dy - (by - ay) * dx;
    if (cross === 0) continue;
    const t = ((line[i] - ax) * dy - (line[i + 1] - ay) * dx) / cross;
    const u = ((line[i] - ax) * (by - ay) - (line[i + 1] - ay) * (bx - ax)) / cross;
    if (t >= 0 && t <= 1 && u >= 0 && u <= 1) meets.push(t);
  }
  return meets.sort((p, q) => p - q);
}
