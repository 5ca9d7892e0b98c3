import type { PointM } from '../../geo/index.ts';
import type { PlanVector } from '../../rigging/index.ts';
import type { Bench } from '../../road/index.ts';
import { placeOnBench } from '../bench-place.ts';
import { corners } from '../footprint.ts';
import type { Spot } from '../spot-types.ts';
import { MARK_SHORT_M, usableUpToM } from './corridor.ts';
import { LAYOUT_LIMITS } from './layout-limits.ts';

/** Steps in which a clear way is lengthened, metres. */
const STEP_M = 2.5;

/**
 * What lies clear along a haul for its team to walk, metres: from a point straight on along the road, inside the usable
 * offsets, at least `leastM` that was tested already (but for what a field ends short of a mark). Past a parked apparatus it goes on
 * only where a team passes beside it. `element` of the bench is near the point at `leastM`.
 */
export function teamRoomM(
  bench: Bench,
  from: PointM,
  way: PlanVector,
  element: number,
  leastM: number,
  parked: Spot | null,
): number {
  const mostM = LAYOUT_LIMITS.roomMostM;
  if (leastM >= mostM) return mostM;
  if (parked !== null && !passable(bench, parked)) return leastM;
  const start = Math.max(0, leastM - MARK_SHORT_M);
  const reachM = usableUpToM(bench, from, way, LAYOUT_LIMITS.corridorM, element, start, mostM);
  if (reachM >= mostM) return mostM;
  return leastM + STEP_M * Math.max(0, Math.floor((reachM - leastM) / STEP_M));
}

/** True where the usable width beside a parked apparatus lets people through on one side. */
function passable(bench: Bench, { footprint, stationM }: Spot): boolean {
  const at = new Float64Array(2);
  const points = corners(footprint);
  let left = Number.POSITIVE_INFINITY;
  let right = Number.POSITIVE_INFINITY;
  for (let k = 0; k < points.length; k += 2) {
    if (!placeOnBench(bench, points[k], points[k + 1], stationM - bench.firstStationM, at)) return false;
    const i = Math.round(at[0]);
    left = Math.min(left, at[1] - bench.left.usableOffsetM[i]);
    right = Math.min(right, bench.right.usableOffsetM[i] - at[1]);
  }
  return Math.max(left, right) >= LAYOUT_LIMITS.passM;
}
