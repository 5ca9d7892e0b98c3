import type { Search } from './search.ts';

/** Why there is no straight haul, in one sentence. */
export function noStraight(search: Search): string {
  const { pins } = search;
  if (pins.turn !== undefined) return 'A change of direction is pinned: straight hauls are left out.';
  const pinned = pinnedFault(search, 'straight');
  if (pinned !== null) return pinned;
  if (nothingHolds(search)) return nothingHoldsWords(search);
  return 'No straight haul: behind the edge, within 10° of the descent, nothing that can hold it stands far enough back for a workable throw.';
}

/** Why there is no turned haul, in one sentence. */
export function noTurned(search: Search): string {
  const { means, marks, trace } = search;
  const pinned = pinnedFault(search, 'turned');
  if (pinned !== null) return pinned;
  if (nothingHolds(search)) return nothingHoldsWords(search);
  if (standing(search) + marks.length < 2) {
    return means.units.length < 2
      ? 'No turned haul: it needs a second anchor, and no second apparatus, tree or rock is there.'
      : 'No turned haul: it needs a second anchor, and no second apparatus finds a spot.';
  }
  if (trace.bends === 0) {
    return 'No turned haul: nothing can hold a change of direction behind the edge; the bench is too narrow or taken up there.';
  }
  if (trace.inSight === 0) {
    return 'No turned haul: a straight corridor along the road leaves the usable edges in both directions; the bench is too narrow or bends too much.';
  }
  return 'No turned haul: along the road no straight corridor inside the usable edges reaches an anchor far enough off for a workable throw; the bench is too narrow, bends too much or is taken up.';
}

const nothingHoldsWords = ({ frame }: Search): string =>
  `${
    frame.ground.conditions.ice
      ? 'On ice no apparatus holds a pull'
      : 'No apparatus that comes finds a spot here that holds a pull'
  }, and no tree or rock is marked: nothing can be an anchor.`;

const standing = ({ standsOf }: Search): number => [...standsOf.values()].filter((stands) => stands.length > 0).length;

const nothingHolds = (search: Search): boolean => standing(search) + search.marks.length === 0;

function pinnedFault({ spots, pins, notAnchors }: Search, kind: 'straight' | 'turned'): string | null {
  const ids = [pins.anchor, pins.turn, pins.belay].filter((id) => id !== undefined);
  const never = notAnchors.find(({ id }) => ids.includes(id));
  if (never !== undefined) return `What is pinned is a ${never.kind}: that is never an anchor.`;
  const pinned = spots.find(({ id, workable }) => ids.includes(id) && !workable);
  if (pinned !== undefined) {
    const [problem] = pinned.problems.filter(({ severity }) => severity === 'unmet');
    return `The pinned spot of ${pinned.apparatusId} does not work: ${problem.text}`;
  }
  return ids.length > 0 ? `No ${kind} haul works around what is pinned.` : null;
}
