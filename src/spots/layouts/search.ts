import type { Mark } from '../../book/index.ts';
import type { Contact, Descent, RopeRise } from '../../descent/index.ts';
import { toRadians } from '../../units/index.ts';
import type { Spot } from '../spot-types.ts';
import type { BelayHolder } from './belay-place.ts';
import type { Bend } from './bends.ts';
import type { Corridor } from './corridor.ts';
import type { HaulFrame } from './haul-frame.ts';
import { haulGround } from './haul-ground.ts';
import type { HopesOf } from './hope.ts';
import { kitByMin } from './kit-at-hand.ts';
import { LAYOUT_LIMITS } from './layout-limits.ts';
import type { LayoutPins } from './layout-types.ts';
import { type Means, ropesBy, type Unit } from './means.ts';
import type { LaneGrid } from './people-there.ts';
import { Podium } from './podium.ts';
import { type PullBase, pullBase } from './pull-base.ts';
import { holdCounts } from './rank.ts';
import type { FinePlaces, Stand } from './stands.ts';

/** All that one search works with. */
export interface Search {
  readonly frame: HaulFrame;
  readonly means: Means;
  readonly pins: LayoutPins;
  /** What may hold a line: apparatus by unit id, and marks. */
  readonly standsOf: ReadonlyMap<string, readonly Stand[]>;
  readonly marks: readonly Stand[];
  readonly spots: readonly Spot[];
  /** Marks that hold no rope. */
  readonly notAnchors: readonly Mark[];
  /** What a pinned belay is tied to; null where none is pinned. */
  readonly pinnedBelays: readonly BelayHolder[] | null;
  /** How far a search for turned hauls came: bends, and anchors seen along a corridor. */
  readonly trace: { bends: number; inSight: number };
  /** Hauls from a last bend so far behind the edge, rounded up to the decimetre, with the bends of the rope. */
  readonly baseAt: (
    kind: 'straight' | 'turned',
    toEdgeM: number,
    planBendDeg?: number,
  ) => { base: PullBase; contacts: readonly Contact[] };
  /** Ropes there when rigging ends, by kind of haul and arrival of the last apparatus. */
  readonly rigRopesM: (kind: 'straight' | 'turned', apparatusAtMin: number) => readonly number[];
  readonly hopesOf: HopesOf;
  /** No rope that comes lets a longer field throw farther, metres. */
  readonly mostFieldM: number;
  readonly laneGrid: LaneGrid;
  readonly fine: Map<Unit, FinePlaces>;
  /** Corridors of turned hauls, by bend and anchor, so far as they were asked for. */
  readonly corridors: Map<Bend, Map<Stand, Corridor>>;
  readonly podiums: { readonly straight: Podium; readonly turned: Readonly<Record<-1 | 1, Podium>> };
}

/**
 * The longest field that is of use, metres: that of the longest throw with the ropes that come. Without ropes every one is, and on a
 * grade, where a longer one may hold better.
 */
export function mostFieldOf({ allRopesM, rates }: Means, grade: number): number {
  const longest = allRopesM[0];
  if (longest === undefined || holdCounts(grade)) return Number.POSITIVE_INFINITY;
  const { clearanceNearM, clearanceAnchorM, tailsM } = rates;
  // The gentlest system takes two metres of a line of its own for each metre of throw.
  return Math.max(LEAST_MOST_M, (longest - tailsM) / 2 + clearanceNearM + clearanceAnchorM + 1);
}

const LEAST_MOST_M = 30;

/** Remembers the ropes there when rigging ends. */
export function rigRopesOf(means: Means): Search['rigRopesM'] {
  const known = new Map<string, readonly number[]>();
  return (kind, apparatusAtMin) => {
    const key = `${kind} ${apparatusAtMin}`;
    const ropes = known.get(key) ?? ropesBy(means, kitByMin(kind, apparatusAtMin, means.rates));
    known.set(key, ropes);
    return ropes;
  };
}

/** Remembers what a haul works on by the distance of its last bend from the edge. */
export function basesOf(
  descent: Descent,
  rises: readonly RopeRise[],
  means: Means,
  fullBelay: boolean,
): Search['baseAt'] {
  const known = new Map<string, ReturnType<Search['baseAt']>>();
  return (kind, toEdgeM, planBendDeg = 0) => {
    const decimetres = Math.ceil(toEdgeM * 10 - 1e-6);
    const key = `${kind} ${kind === 'turned' ? toEdgeM.toFixed(3) : decimetres} ${planBendDeg}`;
    let found = known.get(key);
    if (found === undefined) {
      const { haulGround: ground, contacts } = haulGround(
        descent,
        decimetres / 10,
        rises.filter(({ distanceM }) => -distanceM < toEdgeM),
        means.rates,
        toRadians(planBendDeg),
      )!;
      const held = { ...ground, fullBelay: ground.fullBelay || fullBelay };
      found = { base: pullBase(kind, held, kind === 'turned' ? toEdgeM : 0, means), contacts };
      known.set(key, found);
    }
    return found;
  };
}

export const newPodiums = (): Search['podiums'] => ({
  straight: new Podium(),
  turned: { [-1]: new Podium(), 1: new Podium() },
});

/**
 * Barriers that stand on the bench between a last bend and the edge: the rope runs over them. Where the edge was measured nearer
 * than computed they keep their distance from it: a worse edge takes no barrier off the rope.
 */
export function barriersOnWay({ ground, edge: measured, back }: HaulFrame, edgeNearerM: number): RopeRise[] {
  const edge = { x: measured.x - back.x * edgeNearerM, y: measured.y - back.y * edgeNearerM };
  const rises: RopeRise[] = [];
  for (const { kind, xy } of ground.hazards) {
    if (kind !== 'barrier') continue;
    for (let k = 0; k + 3 < xy.length; k += 2) {
      const along = meets(edge, back, xy[k], xy[k + 1], xy[k + 2], xy[k + 3]);
      if (along !== null) rises.push({ distanceM: -along, heightM: LAYOUT_LIMITS.barrierUpM });
    }
  }
  return rises;
}

const BARRIER_REACH_M = 12;

/** How far along a ray a segment is met, metres; null where it is not. */
function meets(
  from: { readonly x: number; readonly y: number },
  ray: { readonly x: number; readonly y: number },
  ax: number,
  ay: number,
  bx: number,
  by: number,
): number | null {
  const dx = bx - ax;
  const dy = by - ay;
  const cross = ray.x * dy - ray.y * dx;
  if (cross === 0) return null;
  const along = ((ax - from.x) * dy - (ay - from.y) * dx) / cross;
  const share = ((ax - from.x) * ray.y - (ay - from.y) * ray.x) / cross;
  return along > 0 && along < BARRIER_REACH_M && share >= 0 && share <= 1 ? along : null;
}
