/** An upright box on the page, drawing units, y downward. */
export interface Box {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

/** Area that two boxes share, square units, 0 where they are apart. */
export function overlapOf(a: Box, b: Box): number {
  const w = Math.min(a.x1, b.x1) - Math.max(a.x0, b.x0);
  const h = Math.min(a.y1, b.y1) - Math.max(a.y0, b.y0);
  return w > 0 && h > 0 ? w * h : 0;
}

export const grown = (box: Box, by: number): Box => ({
  x0: box.x0 - by,
  y0: box.y0 - by,
  x1: box.x1 + by,
  y1: box.y1 + by,
});

export const holds = (outer: Box, inner: Box): boolean =>
  inner.x0 >= outer.x0 && inner.y0 >= outer.y0 && inner.x1 <= outer.x1 && inner.y1 <= outer.y1;

/** Small boxes along a polyline of x, y pairs, so that a slanting line takes no more room than it covers. */
export function boxesAlong(points: readonly number[], reach: number): Box[] {
  const list: Box[] = [];
  for (let i = 0; i + 3 < points.length; i += 2) {
    const [ax, ay, bx, by] = [points[i], points[i + 1], points[i + 2], points[i + 3]];
    const steps = Math.max(1, Math.ceil(Math.hypot(bx - ax, by - ay) / 8));
    for (let k = 0; k <= steps; k++) {
      const x = ax + ((bx - ax) * k) / steps;
      const y = ay + ((by - ay) * k) / steps;
      list.push({ x0: x - reach, y0: y - reach, x1: x + reach, y1: y + reach });
    }
  }
  return list;
}

/** The box around boxes. */
export const boundsOf = (boxes: readonly Box[]): Box => ({
  x0: Math.min(...boxes.map(({ x0 }) => x0)),
  y0: Math.min(...boxes.map(({ y0 }) => y0)),
  x1: Math.max(...boxes.map(({ x1 }) => x1)),
  y1: Math.max(...boxes.map(({ y1 }) => y1)),
});
