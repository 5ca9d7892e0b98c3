import { separateBelays } from './belay-place.ts';
import type { Candidate } from './candidate.ts';
import { chooseSystem } from './choose-system.ts';
import { trafficPast } from './people-there.ts';
import { compareRank } from './rank.ts';
import { rankKeyOf } from './rank-key.ts';
import type { Search } from './search.ts';

/**
 * A candidate with its belay moved to a marked tree or rock, where it hangs on the apparatus of the main line and that meets
 * its factors: a separate anchor is offered, and never at the cost of a rank.
 */
export function offerSeparateBelay(candidate: Candidate, search: Search): Candidate {
  const { anchor, turn, belay, kind, base, fieldM, choice, lanesTaken, apparatusAtMin, key } = candidate;
  const { frame, means, marks, pinnedBelays } = search;
  if (pinnedBelays !== null || key.verdict !== 'yes' || belay.tie.spot === null) return candidate;
  const spots = [anchor, ...(turn ? [turn.tie] : [])].flatMap(({ spot }) => (spot === null ? [] : [spot]));
  const situation = {
    bend: turn?.bend ?? anchor,
    anchor: turn ? anchor : null,
    spots,
    usedIds: [anchor.id, turn?.tie.id ?? ''],
  };
  const [offered] = separateBelays(frame, marks, situation);
  if (offered === undefined) return candidate;
  const again = chooseSystem(
    {
      ...{ base, fieldM, ropeFieldM: fieldM, belayRunM: offered.runM, handTurns: choice.handTurns },
      othersCount: trafficPast(frame.ground.traits, lanesTaken).othersCount,
      rigRopesM: search.rigRopesM(kind, apparatusAtMin),
    },
    means,
    candidate.by,
  );
  if (again === null) return candidate;
  const load = { verdict: 0, holdFactor: key.leastHoldFactor ?? Number.POSITIVE_INFINITY } as const;
  const moved = rankKeyOf(frame, again, key.lanes, load, kind, key.minutes);
  return compareRank(moved, key).order > 0 ? candidate : { ...candidate, belay: offered, choice: again, key: moved };
}
