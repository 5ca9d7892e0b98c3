import type { PointM } from '../../geo/index.ts';
import { boxOf, segmentHitsBox } from '../box-hit.ts';
import type { Spot } from '../spot-types.ts';
import { addLoad, freeOf, noLoad } from './anchor-load.ts';
import { type BelaySituation, belayAlone, mayBelay, ownBelay, separateBelays } from './belay-place.ts';
import type { BelayPlace } from './candidate.ts';
import { LAYOUT_LIMITS } from './layout-limits.ts';
import { bitCount } from './people-there.ts';
import type { PullBase } from './pull-base.ts';
import type { Search } from './search.ts';
import { ropeClear, spotsApart } from './spots-apart.ts';
import type { Stand } from './stands.ts';

/**
 * Belays worth a look where `holder` holds the main line at the edge: a pinned one; an attachment of its own apparatus and the
 * nearest tree or rock; for a tree or rock another one, else apparatus parked for the belay alone, else the same.
 *
 * @param bendM from the edge to the main line's last bend
 */
export function belaysFor(
  search: Search,
  { tie, unit }: Stand,
  kind: 'straight' | 'turned',
  bendM: number,
  base: PullBase,
  place: Pick<BelaySituation, 'bend' | 'anchor'>,
): BelayPlace[] {
  const { frame, pinnedBelays, marks } = search;
  const spots: Spot[] = tie.spot === null ? [] : [tie.spot];
  const situation = { ...place, spots, usedIds: [tie.id] };
  const own = ownBelay(tie, kind, bendM);
  if (pinnedBelays !== null) {
    return pinnedBelays.flatMap((pinned) => {
      if (pinned.tie.id === tie.id) return [own];
      if (unit !== null && pinned.unit === unit) return [];
      return mayBelay(frame, pinned.tie, situation) ? [belayAlone(frame, pinned)] : [];
    });
  }
  const others = separateBelays(frame, marks, situation).slice(0, 1);
  if (tie.anchor.kind === 'apparatus') return tie.anchor.attachments >= 2 ? [own, ...others] : others;
  if (others.length > 0) return others;
  const parked = parkedBelays(search, base, situation);
  return kind === 'straight' && parked.length > 0 ? parked : [...parked, own];
}

/** Of each apparatus the place where it holds the belay alone with its factors met: fewest lanes, then nearest to the edge. */
function parkedBelays({ frame, means, standsOf }: Search, base: PullBase, situation: BelaySituation): BelayPlace[] {
  const { edge } = frame;
  const { rates, conditions } = means;
  const meets = ({ tie }: Stand): boolean => {
    const load = noLoad();
    const toward = { x: edge.x - tie.x, y: edge.y - tie.y };
    addLoad(load, tie.anchor, freeOf(tie.anchor, 1), base.tensionKn.belay, toward, rates.heldFactor, conditions, rates);
    return load.verdict === 0;
  };
  return means.units.flatMap(({ apparatus }) =>
    (standsOf.get(apparatus.id) ?? [])
      .filter(({ tie }) => mayBelay(frame, tie, situation) && offMainLine(tie.spot, edge, situation))
      .filter(meets)
      .map((stand) => belayAlone(frame, stand))
      .sort((a, b) => bitCount(a.lanes) - bitCount(b.lanes) || a.runM - b.runM)
      .slice(0, 1),
  );
}

/** True where an apparatus stands out of the main line, and of the way of those who haul straight back. */
const offMainLine = (spot: Spot | null, edge: BelaySituation['bend'], { bend, anchor }: BelaySituation): boolean => {
  if (spot === null) return false;
  if (anchor !== null) return ropeClear(spot, edge, bend, false);
  const share = LAYOUT_LIMITS.roomMostM / Math.hypot(bend.x - edge.x, bend.y - edge.y);
  const far = { x: edge.x + (bend.x - edge.x) * share, y: edge.y + (bend.y - edge.y) * share };
  return !segmentHitsBox(boxOf(spot.footprint), LAYOUT_LIMITS.corridorM / 2, edge.x, edge.y, far.x, far.y);
};

/**
 * The belays that go with an anchor: apparatus there for the belay alone is neither the anchor's nor in the way of the haul; on a
 * tree or rock that holds the main line too only where nothing else is left.
 */
export function belaysBeside<T extends { readonly place: BelayPlace }>(
  belays: readonly T[],
  turn: Stand,
  bend: PointM,
  anchor: Stand,
): readonly T[] {
  if (belays.every(({ place }) => place.unit === null)) return belays;
  const fits = belays.filter(
    ({ place: { unit, tie } }) =>
      unit === null || tie.spot === null || (unit !== anchor.unit && outOfWay(tie.spot, bend, anchor)),
  );
  const apart = fits.filter(({ place }) => place.tie.id !== turn.tie.id);
  return turn.tie.spot === null && apart.length > 0 ? apart : fits;
}

const outOfWay = (spot: Spot, bend: PointM, { tie }: Stand): boolean =>
  !segmentHitsBox(boxOf(spot.footprint), LAYOUT_LIMITS.corridorM / 2, bend.x, bend.y, tie.x, tie.y) &&
  (tie.spot === null || spotsApart(spot, tie.spot));
