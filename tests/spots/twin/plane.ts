import type { TwinRoad } from './road.ts';

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A rectangle: middle, unit vector along it, half length and half width; metres. */
export interface Rect extends Point {
  readonly ux: number;
  readonly uy: number;
  readonly halfLengthM: number;
  readonly halfWidthM: number;
}

export const distance = (a: Point, b: Point): number => Math.hypot(b.x - a.x, b.y - a.y);

/** Unit vector along the road's drawing at a station of the arc. */
export const alongAt = ({ curvature }: TwinRoad, s: number): Point => ({
  x: Math.cos(s * curvature),
  y: Math.sin(s * curvature),
});

/** Unit vector to the right of the drawing. */
export const rightAt = ({ curvature }: TwinRoad, s: number): Point => ({
  x: Math.sin(s * curvature),
  y: -Math.cos(s * curvature),
});

/** The point at a station and an offset to the right. */
export function pointAt(road: TwinRoad, s: number, q: number): Point {
  const k = road.curvature;
  const n = rightAt(road, s);
  const x = k === 0 ? s : Math.sin(s * k) / k;
  const y = k === 0 ? 0 : (1 - Math.cos(s * k)) / k;
  return { x: x + q * n.x, y: y + q * n.y };
}

/** Station and offset of a point, in closed form, written to `out`. */
export function placeAt({ curvature }: TwinRoad, x: number, y: number, out: Float64Array): void {
  if (curvature === 0) {
    out[0] = x;
    out[1] = -y;
    return;
  }
  const radius = 1 / curvature;
  const sign = Math.sign(radius);
  out[0] = Math.atan2(sign * x, sign * (radius - y)) * radius;
  out[1] = sign * (Math.sqrt(x * x + (y - radius) * (y - radius)) - Math.abs(radius));
}

/** Points of a rectangle's outline, no farther apart than a step, corners among them. */
export function outlineOf({ x, y, ux, uy, halfLengthM, halfWidthM }: Rect, stepM: number): Point[] {
  const points: Point[] = [];
  const at = (u: number, v: number): void => {
    points.push({ x: x + u * ux + v * uy, y: y + u * uy - v * ux });
  };
  const long = Math.ceil((2 * halfLengthM) / stepM);
  const wide = Math.ceil((2 * halfWidthM) / stepM);
  for (let k = 0; k <= long; k++) {
    const u = halfLengthM * ((2 * k) / long - 1);
    at(u, halfWidthM);
    at(u, -halfWidthM);
  }
  for (let k = 1; k < wide; k++) {
    const v = halfWidthM * ((2 * k) / wide - 1);
    at(halfLengthM, v);
    at(-halfLengthM, v);
  }
  return points;
}

export const cornersOf = (rect: Rect): Point[] => {
  const { x, y, ux, uy, halfLengthM: l, halfWidthM: w } = rect;
  return [
    [l, w],
    [l, -w],
    [-l, -w],
    [-l, w],
  ].map(([u, v]) => ({ x: x + u! * ux + v! * uy, y: y + u! * uy - v! * ux }));
};

/** Distance from a point to a rectangle, metres, 0 inside. */
export function toRectM({ x, y, ux, uy, halfLengthM, halfWidthM }: Rect, px: number, py: number): number {
  const u = Math.abs((px - x) * ux + (py - y) * uy) - halfLengthM;
  const v = Math.abs((px - x) * uy - (py - y) * ux) - halfWidthM;
  return Math.hypot(Math.max(0, u), Math.max(0, v));
}

/** True where two rectangles overlap: no side of either parts them (separating axes). */
export function overlap(a: Rect, b: Rect, byM: number): boolean {
  const [ca, cb] = [cornersOf(a), cornersOf(b)];
  for (const [ux, uy] of [
    [a.ux, a.uy],
    [-a.uy, a.ux],
    [b.ux, b.uy],
    [-b.uy, b.ux],
  ] as const) {
    const span = (corners: Point[]): [number, number] => {
      const along = corners.map((c) => c.x * ux + c.y * uy);
      return [Math.min(...along), Math.max(...along)];
    };
    const [sa, sb] = [span(ca), span(cb)];
    if (sa[1] <= sb[0] + byM || sb[1] <= sa[0] + byM) return false;
  }
  return true;
}

/** Least distance from points a tenth of a metre apart on a segment to a rectangle, metres. */
export function segmentToRectM(rect: Rect, a: Point, b: Point): number {
  const n = Math.max(1, Math.ceil(distance(a, b) / 0.1));
  let least = Number.POSITIVE_INFINITY;
  for (let k = 0; k <= n && least > 0; k++) {
    least = Math.min(least, toRectM(rect, a.x + ((b.x - a.x) * k) / n, a.y + ((b.y - a.y) * k) / n));
  }
  return least;
}

/** Least distance between two rectangles, from points along the outlines of both, metres. */
export function apartM(a: Rect, b: Rect): number {
  const to = (rect: Rect, other: Rect): number =>
    Math.min(...outlineOf(other, 0.5).map((p) => toRectM(rect, p.x, p.y)));
  return Math.min(to(a, b), to(b, a));
}

/** True where a point lies inside a triangle, its sides left out. */
export function inTriangle(p: Point, a: Point, b: Point, c: Point): boolean {
  const turn = (u: Point, v: Point): number => (v.x - u.x) * (p.y - u.y) - (v.y - u.y) * (p.x - u.x);
  const [s, t, u] = [turn(a, b), turn(b, c), turn(c, a)];
  return (s > 1e-9 && t > 1e-9 && u > 1e-9) || (s < -1e-9 && t < -1e-9 && u < -1e-9);
}
