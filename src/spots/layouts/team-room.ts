import type { PointM } from '../../geo/index.ts';
import type { PlanVector } from '../../rigging/index.ts';
import type { Bench } from '../../road/index.ts';
import { placeOnBench } from '../bench-place.ts';
import { corners } from '../footprint.ts';
import type { Spot } from '../spot-types.ts';
import { insideUsable } from './corridor.ts';
import { LAYOUT_LIMITS } from './layout-limits.ts';

/** Steps in which a clear way is lengthened, metres. */
const STEP_M = 2.5;

/**
 * What lies clear along a haul for its team to walk, metres: from a point straight on along the road, inside the usable
 * offsets, at least `leastM` that was tested already. Past a parked apparatus it goes on only where a team passes beside it.
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
  const clear = (m: number): boolean =>
    insideUsable(bench, from.x, from.y, from.x + way.x * m, from.y + way.y * m, LAYOUT_LIMITS.corridorM, element);
  if (clear(mostM)) return mostM;
  let room = leastM;
  while (room + STEP_M <= mostM && clear(room + STEP_M)) room += STEP_M;
  return room;
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
