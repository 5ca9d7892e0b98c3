import { insideRing } from './hazard-hits.ts';
import { FIRM_POINT_M, type Hazard } from './hazards.ts';

/** True where somebody marked the ground at a point as firm. */
export function onFirmMark(hazards: readonly Hazard[], x: number, y: number): boolean {
  for (const { kind, shape, xy } of hazards) {
    if (kind !== 'firm ground') continue;
    if (shape === 'area' ? insideRing(xy, x, y) : nearAny(xy, x, y)) return true;
  }
  return false;
}

function nearAny(xy: Float64Array, x: number, y: number): boolean {
  for (let k = 0; k + 1 < xy.length; k += 2) {
    if (Math.hypot(xy[k] - x, xy[k + 1] - y) <= FIRM_POINT_M) return true;
  }
  return false;
}
