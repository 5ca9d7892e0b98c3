import type { AngleRule, Mark } from '../book/index.ts';
import { type Descent, hillOf, workUpDescent } from '../descent/index.ts';
import type { LonLat } from '../geo/index.ts';
import { type Bench, edgeKindAt, type RoadIndex, type RoadPlace } from '../road/index.ts';
import type { Ground, SurfaceInfo } from '../terrain/index.ts';
import { benchOutline, edgeLine } from './bench-shapes.ts';
import { type CrossingBelow, crossingsBelow } from './crossings-below.ts';
import { surroundingsOf } from './surroundings.ts';
import { coarsest, layersUsed } from './terrain-part.ts';

export type Side = 'left' | 'right';

/** What one side is worked out from. */
export interface SideInputs {
  readonly ground: Ground;
  readonly roads: RoadIndex;
  readonly marks: readonly Mark[];
  readonly patient: LonLat | null;
  readonly rule: AngleRule;
}

/** One side of the road, worked out as far as its ground goes. */
export interface SideWork {
  readonly side: Side;
  readonly descent: Descent | null;
  /** Below a patient point, where one is given. */
  readonly below: readonly CrossingBelow[];
  readonly info: SurfaceInfo;
  readonly used: readonly number[];
}

/** How far back over the bench the profile tells the ground, metres, at most. */
const BEHIND_M = 14;

/** Works out one side of the road at station index `i` of a bench; no descent where that side does not drop. */
export function workUpSide(inputs: SideInputs, bench: Bench, place: RoadPlace, i: number, side: Side): SideWork {
  const { ground, marks, patient, rule, roads } = inputs;
  const own = side === 'right' ? bench.right : bench.left;
  const sign = side === 'right' ? 1 : -1;
  const here = [bench.x[i], bench.y[i]];
  let used = layersUsed(ground, here);
  let info = coarsest(ground, used);
  if (edgeKindAt(own, i) !== 'drop') return { side, descent: null, below: [], info, used };
  const ownWays = new Set(place.route.legs.map((leg) => roads.network.ways[leg.way].id));
  const around = surroundingsOf(roads.network, marks, ground.plane, benchOutline(bench), ownWays);
  for (;;) {
    const descent = workUpDescent({
      hill: hillOf(ground, info),
      edge: { x: own.edgeX[i], y: own.edgeY[i] },
      outward: { x: sign * bench.normalX[i], y: sign * bench.normalY[i] },
      edgeLine: edgeLine(own, i),
      patient: patient ? ground.plane.toLocal(patient) : null,
      around,
      rule,
      behindM: BEHIND_M,
    });
    if (!descent) return { side, descent, below: [], info, used };
    used = layersUsed(ground, [...here, ...pointsOf(descent)]);
    const worst = coarsest(ground, used);
    // The slope may lie on coarser ground than the road does: then the coarser ground's accuracy decides.
    if (worst === info) {
      const below = patient ? crossingsBelow(hillOf(ground, info), descent.line, around, rule) : [];
      return { side, descent, below, info, used };
    }
    info = worst;
  }
}

function pointsOf({ line }: Descent): number[] {
  const points: number[] = [];
  for (let d = 0; d < line.lengthM; d += 1) {
    points.push(line.start.x + line.direction.x * d, line.start.y + line.direction.y * d);
  }
  points.push(line.end.x, line.end.y);
  return points;
}
