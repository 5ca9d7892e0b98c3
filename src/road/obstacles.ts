import type { SideSign } from './edge-evidence.ts';

/** A barrier or wall near the road: local metres, stride 2. Mapped ones were drawn with the road line, marks on the ground. */
export interface Obstacle {
  readonly kind: 'barrier' | 'wall';
  readonly line: Float64Array;
  readonly mapped: boolean;
}

/** Sections farther than this from an obstacle do not meet it, metres. */
const REACH_M = 30;

/** Points with a direction to the right, and how far right of them the middle of the road was found, metres. */
export interface Frame {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly nx: Float64Array;
  readonly ny: Float64Array;
  readonly shiftM: Float64Array;
}

/**
 * Distance from the middle of the road to the nearest obstacle on one side of each station, metres outward, NaN where
 * there is none. A mapped obstacle may be as misplaced as the road line beside it: it keeps the side on which it is drawn
 * and the shorter of its distances from the line as drawn and from the road as found.
 */
export function obstacleFaces(
  { x, y, nx, ny, shiftM }: Frame,
  obstacles: readonly Obstacle[],
  kind: Obstacle['kind'],
  side: SideSign,
): Float64Array {
  const count = x.length;
  const face = new Float64Array(count).fill(Number.NaN);
  for (const { line, mapped, kind: own } of obstacles) {
    if (own !== kind) continue;
    for (let k = 0; k + 3 < line.length; k += 2) {
      const [ax, ay, bx, by] = [line[k]!, line[k + 1]!, line[k + 2]!, line[k + 3]!];
      for (let i = 0; i < count; i++) {
        // Ends of the segment in the frame of the station: u to the right, v along the road.
        const ua = (ax - x[i]!) * nx[i]! + (ay - y[i]!) * ny[i]!;
        const va = (ay - y[i]!) * nx[i]! - (ax - x[i]!) * ny[i]!;
        const vb = (by - y[i]!) * nx[i]! - (bx - x[i]!) * ny[i]!;
        if (va * vb > 0 || va === vb) continue;
        const ub = (bx - x[i]!) * nx[i]! + (by - y[i]!) * ny[i]!;
        const u = ua + ((ub - ua) * va) / (va - vb);
        const fromRoad = side * (u - shiftM[i]!);
        const distance = mapped ? asDrawn(side * u, fromRoad) : fromRoad;
        if (distance >= 0 && distance < REACH_M && !(face[i]! <= distance)) face[i] = distance;
      }
    }
  }
  return face;
}

const asDrawn = (fromLine: number, fromRoad: number): number =>
  fromLine < 0 ? Number.NaN : fromRoad < 0 ? fromLine : Math.min(fromLine, fromRoad);
