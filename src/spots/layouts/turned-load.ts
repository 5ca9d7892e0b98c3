import { type PlanVector, turnForce } from '../../rigging/index.ts';
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

/** Every force of a turned haul on what holds it; `leg` is the unit vector from the bend to the anchor. */
export function turnedLoad(
  { means }: Pick<Search, 'means'>,
  { turn, bend, base }: { readonly turn: Stand; readonly bend: Bend; readonly base: PullBase },
  held: AnchorLoad,
  leg: PlanVector,
  anchor: Stand,
  belay: BelayPlace,
): AnchorLoad {
  const { rates, conditions } = means;
  const { tensionKn, farHangingKn } = base;
  const load = { ...held };
  const free = freeOf(turn.tie.anchor, belay.tie.id === turn.tie.id ? 2 : 1);
  const bent = turnForce(tensionKn.hanging, bend.towardEdge, farHangingKn, leg);
  addLoad(load, turn.tie.anchor, free, bent.kn, bent.toward, rates.haulingFactor, conditions, rates);
  const back = { x: -leg.x, y: -leg.y };
  const atMain = freeOf(anchor.tie.anchor, belay.tie.id === anchor.tie.id ? 2 : 1);
  addLoad(load, anchor.tie.anchor, atMain, farHangingKn, back, rates.haulingFactor, conditions, rates);
  return load;
}
