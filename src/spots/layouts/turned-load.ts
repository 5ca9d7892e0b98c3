import type { PlanForce } from '../../rigging/index.ts';
import { type AnchorLoad, addLoad, freeOf, noLoad } from './anchor-load.ts';
import type { Bend } from './bends.ts';
import type { BelayPlace } from './candidate.ts';
import type { PullBase } from './pull-base.ts';
import type { Search } from './search.ts';
import type { Stand } from './stands.ts';

/** What lies on turn and belay whatever the anchor: held at the turn, and caught by the belay. */
export function heldLoad(
  { frame, means }: Pick<Search, 'frame' | 'means'>,
  { tie }: Stand,
  bend: Bend,
  belay: BelayPlace,
  base: PullBase,
): AnchorLoad {
  const { rates, conditions } = means;
  const { edge } = frame;
  const { tensionKn } = base;
  const load = noLoad();
  const shared = belay.tie.id === tie.id;
  const free = freeOf(tie.anchor, shared ? 2 : 1);
  addLoad(load, tie.anchor, free, tensionKn.held, bend.towardEdge, rates.heldFactor, conditions, rates);
  const caught = { x: edge.x - belay.tie.x, y: edge.y - belay.tie.y };
  const atBelay = shared ? free : freeOf(belay.tie.anchor, 1);
  addLoad(load, belay.tie.anchor, atBelay, tensionKn.belay, caught, rates.heldFactor, conditions, rates);
  return load;
}

/** Adds what lies on the anchor of a turned haul whatever holds its bend; (ux, uy) is the unit vector from the bend to the anchor. */
export function addMainLoad(
  load: AnchorLoad,
  { means }: Pick<Search, 'means'>,
  { tie }: Stand,
  { farHangingKn }: PullBase,
  ux: number,
  uy: number,
): void {
  const { rates, conditions } = means;
  const back = { x: -ux, y: -uy };
  addLoad(load, tie.anchor, freeOf(tie.anchor, 1), farHangingKn, back, rates.haulingFactor, conditions, rates);
}

/** Adds to what is known of a turned haul what its bent line does to the change of direction. */
export function addBentLoad(
  load: AnchorLoad,
  { means }: Pick<Search, 'means'>,
  { tie }: Stand,
  belay: BelayPlace,
  { kn, toward }: PlanForce,
): void {
  const { rates, conditions } = means;
  const free = freeOf(tie.anchor, belay.tie.id === tie.id ? 2 : 1);
  addLoad(load, tie.anchor, free, kn, toward, rates.haulingFactor, conditions, rates);
}
