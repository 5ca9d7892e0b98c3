import type { Candidate } from './candidate.ts';
import { tieBreak } from './podium.ts';
import { compareRank } from './rank.ts';

const MOST = 8;

/** Of groups of candidates the first of each, then what differs visibly from those before it, by rank and no more than eight. */
export function chosenFew(groups: readonly (readonly Candidate[])[]): Candidate[] {
  const byRank = (a: Candidate, b: Candidate): number => compareRank(a.key, b.key).order || tieBreak(a, b);
  const firsts = groups.flatMap((group) => [...group].sort(byRank).slice(0, 1));
  const chosen = [...firsts];
  for (const one of groups.flat().sort(byRank)) {
    if (chosen.length < MOST && !chosen.some((other) => looksAlike(one, other))) chosen.push(one);
  }
  return chosen.sort(byRank);
}

/** The same to a crew: kind, way, system, resets, lanes, verdict, and whether a tree or rock holds it. */
function looksAlike(a: Candidate, b: Candidate): boolean {
  const marks = (one: Candidate): number =>
    [one.anchor, one.belay.tie, ...(one.turn ? [one.turn.tie] : [])].filter(({ spot }) => spot === null).length;
  return (
    a.kind === b.kind &&
    (a.kind === 'straight' || a.along === b.along) &&
    a.choice.advantage === b.choice.advantage &&
    a.choice.resets === b.choice.resets &&
    a.key.lanes === b.key.lanes &&
    a.key.verdict === b.key.verdict &&
    marks(a) === marks(b)
  );
}
