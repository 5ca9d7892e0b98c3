import type { CentreLine } from './centre-line.ts';
import type { SideSign } from './edge-evidence.ts';

/** The road line as drawn at each station: point, and unit normal to the right; local metres. */
export interface DrawnFrame {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly nx: Float64Array;
  readonly ny: Float64Array;
}

/** Neighbouring stations looked at either way for the place where the edge crosses the normal of the drawn line. */
const LOOK = 25;
/** Edge points farther apart than this are a jump, not a line, metres. */
const JUMP_M = 2.5;

/**
 * Offsets of a curve from the line as drawn, metres, positive to the right: where the curve through the points
 * `distanceM` out from the centre line crosses the drawn line's normal at each station. Sections follow the road as found,
 * which may run askew to its drawing. Where no two neighbours cross the normal, the station's own point is projected.
 */
export function offsetsAsDrawn(
  drawn: DrawnFrame,
  centre: CentreLine,
  side: SideSign | 0,
  distanceM: Float64Array | null,
): Float64Array {
  const count = centre.count;
  const px = new Float64Array(count);
  const py = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    const d = distanceM ? side * distanceM[i]! : 0;
    px[i] = centre.x[i]! + d * centre.nx[i]!;
    py[i] = centre.y[i]! + d * centre.ny[i]!;
  }
  const out = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    const [x, y, nx, ny] = [drawn.x[i]!, drawn.y[i]!, drawn.nx[i]!, drawn.ny[i]!];
    const across = (k: number): number => (px[k]! - x) * nx + (py[k]! - y) * ny;
    const along = (k: number): number => (px[k]! - x) * -ny + (py[k]! - y) * nx;
    const own = across(i);
    out[i] = own;
    // Walk toward the crossing: the sign of `along` says which way it lies.
    const step = along(i) > 0 ? -1 : 1;
    for (let k = i; Math.abs(k - i) < LOOK; k += step) {
      const next = k + step;
      if (next < 0 || next >= count) break;
      const a = along(k);
      const b = along(next);
      if (Number.isNaN(a) || Number.isNaN(b)) break;
      if (a * b > 0) continue;
      const jump = Math.hypot(px[next]! - px[k]!, py[next]! - py[k]!) > JUMP_M;
      if (!jump && a !== b) out[i] = across(k) + ((across(next) - across(k)) * a) / (a - b);
      break;
    }
  }
  return out;
}
