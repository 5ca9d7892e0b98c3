import type { Bench, BenchSide } from '../road/index.ts';
import { type Box, segmentHitsBox } from './box-hit.ts';
import { insideRing } from './hazard-hits.ts';
import { type Hazard, SOFT_POINT_M } from './hazards.ts';

/** Soft ground within this of the end of the bench softens that end, metres (common practice, no source). */
const NEAR_M = 3;

/** Flags the elements whose end of the bench on one side lies in or near marked soft ground. */
export function nearSoft(bench: Bench, { edgeX, edgeY }: BenchSide, hazards: readonly Hazard[]): Uint8Array {
  const flags = new Uint8Array(bench.count);
  for (const { kind, shape, xy } of hazards) {
    if (kind !== 'soft ground') continue;
    const half = shape === 'point' ? NEAR_M + SOFT_POINT_M : NEAR_M;
    for (let i = 0; i < bench.count; i++) {
      const x = edgeX[i];
      const y = edgeY[i];
      if (Number.isNaN(x)) continue;
      const box: Box = { x, y, ux: 0, uy: 1, halfLengthM: half, halfWidthM: half };
      if (touches(xy, box) || (shape === 'area' && insideRing(xy, x, y))) flags[i] = 1;
    }
  }
  return flags;
}

function touches(xy: Float64Array, box: Box): boolean {
  for (let k = 0; k + 1 < xy.length; k += 2) {
    if (segmentHitsBox(box, 0, xy[k], xy[k + 1], xy[k + 2] ?? xy[k], xy[k + 3] ?? xy[k + 1])) return true;
  }
  return false;
}
