import { anchorsSeen, LEAST_FIELD_M, OpenAnchors } from './anchors-seen.ts';
import { belaysBeside, belaysFor } from './belays-for.ts';
import { type Bend, type BendChoice, bendGrid } from './bends.ts';
import { LAYOUT_LIMITS } from './layout-limits.ts';
import type { Search } from './search.ts';
import type { Stand } from './stands.ts';
import { type NearestBends, type TurnTie, tieFits, turnTies } from './turn-tie.ts';
import { heldLoad } from './turned-load.ts';
import { type TieBelay, tryPair } from './turned-pair.ts';

/**
 * Seeks turned hauls with a change of direction on one of `turns` and the anchor on one of `anchors`, one way along the road, over
 * every bend of a grid that a tie fits.
 */
export function searchTurned(
  search: Search,
  turns: readonly Stand[],
  anchors: readonly Stand[],
  along: -1 | 1,
  choice: BendChoice,
): void {
  const { frame, means } = search;
  searchBends(search, bendGrid(frame, along, means.rates.pulleyEfficiency, choice), turns, anchors, along);
}

/** The same over some bends. */
export function searchBends(
  search: Search,
  bends: readonly Bend[],
  turns: readonly Stand[],
  anchors: readonly Stand[],
  along: -1 | 1,
): void {
  const { edge } = search.frame;
  const near = turns.filter(({ tie }) => Math.hypot(tie.x - edge.x, tie.y - edge.y) < NEAR_M);
  const far = anchors.filter(({ alongM }) => alongM * along > LEAST_FIELD_M - 1);
  const nearest: NearestBends = new Map();

  for (const bend of bends) {
    const ties = turnTies(bend, near, nearest);
    search.trace.bends += ties.length;
    if (ties.length > 0) fromBend(search, bend, ties, along, far);
  }
}

/** No attachment farther from the edge reaches a bend by its tie. */
const NEAR_M = 6 + LAYOUT_LIMITS.tieMostM;

function fromBend(
  search: Search,
  bend: Bend,
  ties: readonly TurnTie[],
  along: -1 | 1,
  anchors: readonly Stand[],
): void {
  const { road } = search.frame;
  const efficiency = search.means.rates.pulleyEfficiency;
  const { base, contacts } = search.baseAt('turned', bend.toEdgeM, bend.offLineDeg);
  const one = { bend, along, base, contacts };
  const seen = anchorsSeen(search, one, anchors, ties[0].turn.unit?.atMin ?? 0);
  if (seen.length === 0) return;
  const anchorsOpen = new OpenAnchors(search, one, seen);
  const onward = { bend, anchor: { x: bend.x + along * road.x, y: bend.y + along * road.y } };
  for (const tie of ties) {
    const { turn } = tie;
    const belays = belaysFor(search, turn, 'turned', bend.toEdgeM, base, onward).map(
      (place): TieBelay => ({ place, held: heldLoad(search, turn, bend, place, base) }),
    );
    for (const belay of belays) {
      const { held, place } = belay;
      for (const { far, leastFactor } of anchorsOpen.of(turn.lanes | place.lanes, held.verdict)) {
        if (held.holdFactor < leastFactor || far.anchor.tie.id === turn.tie.id) continue;
        if (!tieFits(tie, bend, far.ux, far.uy, efficiency)) continue;
        if (belaysBeside(belays, turn, bend, far.anchor).includes(belay)) tryPair(search, one, turn, far, belay);
      }
    }
  }
}
