import type { Spot } from '../spot-types.ts';
import type { BelayHolder } from './belay-place.ts';
import type { BendChoice } from './bends.ts';
import type { Candidate } from './candidate.ts';
import { chosenFew } from './chosen-few.ts';
import { haulFrame } from './haul-frame.ts';
import { hopeRows } from './hope.ts';
import { layoutSpots } from './layout-spots.ts';
import type { LayoutQuestion, LayoutRoom, Layouts } from './layout-types.ts';
import { type Means, meansOf, type Unit } from './means.ts';
import { noStraight, noTurned } from './none-because.ts';
import { offerSeparateBelay } from './offer-belay.ts';
import { laneGrid } from './people-there.ts';
import { pinnedSpots } from './pins.ts';
import { refineStraight, refineTurned } from './refine.ts';
import { barriersOnWay, basesOf, mostFieldOf, newPodiums, rigRopesOf, type Search } from './search.ts';
import { searchStraight } from './search-straight.ts';
import { searchTurned } from './search-turned.ts';
import { firstOfEach, markStands, type Stand, unitPairs, unitStands } from './stands.ts';
import { markTies } from './tie-places.ts';
import { whyRanked } from './why.ts';
import { workOut } from './work-out.ts';

/**
 * The best few complete haul arrangements of a site, by rank: straight, and turned in both directions along the road, over
 * its candidate spots, marked trees and rocks. None on a bench of assumed width or in screening-only data. Throws a
 * `UserError` on a pin that names no spot, mark or apparatus.
 */
export function findLayouts(question: LayoutQuestion): Layouts {
  const { ground, descent, screeningOnly } = question;
  const none = (why: string): Layouts => ({ spots: [], layouts: [], noStraight: why, noTurned: why });
  if (screeningOnly || ground.bench.how === 'assumed') {
    return none('The elevation data are too coarse to see the road bench: no spot and no layout is told.');
  }
  const means = meansOf({ ...question, conditions: ground.conditions, planHigh: descent.angle?.planAs === 'high' });
  const spots = allSpots(question, means);
  if (descent.angle === null) {
    return { ...none('The slope is too short to have an angle: no haul is planned on it.'), spots };
  }
  const search = newSearch(question, means, spots);
  const room = question.room ?? {};
  const draft = question.draft ?? false;
  seekStraight(search, means, room, draft);
  seekTurned(search, means, room, draft);
  const { straight, turned } = search.podiums;
  const groups = [straight.kept(), turned[1].kept(), turned[-1].kept()];
  const chosen = chosenFew(groups.map((group) => group.map((one) => offerSeparateBelay(one, search))));
  const layouts = chosen.map((candidate) => workOut(candidate, search, question));
  return {
    spots: withUsed(spots, chosen),
    layouts: layouts.map((layout, i) => ({ ...layout, rank: i + 1, why: whyRanked(layouts, i, search) })),
    noStraight: draft || groups[0].length > 0 ? null : noStraight(search),
    noTurned: draft || groups[1].length + groups[2].length > 0 ? null : noTurned(search),
  };
}

/** Candidates, with every spot that a layout uses among them. */
function withUsed(spots: readonly Spot[], chosen: readonly Candidate[]): Spot[] {
  const all = new Map(spots.map((spot) => [spot.id, spot]));
  for (const { anchor, turn, belay, handTurn } of chosen) {
    for (const tie of [anchor, turn?.tie, belay.tie, handTurn?.tie]) if (tie?.spot) all.set(tie.spot.id, tie.spot);
  }
  return [...all.values()];
}

/** Candidates, with every pinned spot among them. */
function allSpots(question: LayoutQuestion, means: Means): Spot[] {
  const coming = means.units.map(({ apparatus }) => apparatus);
  const found = question.spots ?? layoutSpots(question.ground, coming, question.rates);
  const pinned = pinnedSpots(question).filter(({ id }) => !found.some((spot) => spot.id === id));
  return pinned.length === 0 ? [...found] : [...found, ...pinned];
}

function newSearch(question: LayoutQuestion, means: Means, spots: readonly Spot[]): Search {
  const { ground, descent, marks, plane, pins, rates } = question;
  const frame = haulFrame(ground, descent, rates.mostResets);
  const ties = markTies(marks, plane, rates, Object.values(pins));
  const pinnedFor = (unit: Unit): string | undefined =>
    [pins.anchor, pins.turn, pins.belay].find(
      (id) => id !== undefined && spots.some((spot) => spot.id === id && spot.apparatusId === unit.apparatus.id),
    );
  const standsOf = new Map(
    means.units.map((unit) => [unit.apparatus.id, unitStands(frame, unit, spots, pinnedFor(unit))]),
  );
  const belaySpot = spots.find(({ id, workable }) => id === pins.belay && workable);
  const belayUnit = means.units.find(({ apparatus }) => apparatus.id === belaySpot?.apparatusId);
  const pinnedBelays: BelayHolder[] =
    belaySpot && belayUnit
      ? unitStands(frame, belayUnit, spots, belaySpot.id)
      : ties.filter(({ id }) => id === pins.belay).map((tie) => ({ tie, unit: null, lanes: 0 }));
  const rigRopesM = rigRopesOf(means);
  return {
    ...{ rigRopesM, hopesOf: hopeRows(means, frame, (atMin) => rigRopesM('turned', atMin)) },
    mostFieldM: mostFieldOf(means, frame.grade),
    laneGrid: laneGrid(ground.traits),
    fine: new Map(),
    corridors: new Map(),
    ...{ frame, means, pins, spots, standsOf, podiums: newPodiums(), trace: { bends: 0, inSight: 0 } },
    marks: markStands(frame, ties),
    notAnchors: marks.filter(({ kind }) => kind !== 'tree' && kind !== 'rock'),
    pinnedBelays: pins.belay === undefined ? null : pinnedBelays,
    baseAt: basesOf(descent, barriersOnWay(frame, question.edgeNearerM ?? 0), means, question.fullBelay ?? false),
  };
}

function seekStraight(search: Search, means: Means, room: LayoutRoom, draft: boolean): void {
  const { pins, marks } = search;
  if (pins.turn !== undefined) return;
  const reached = within(room);
  const pinned = (stands: readonly Stand[]): Stand[] => only(stands, pins.anchor).filter(reached);
  // All of them, alike or not: with one that comes later more rope is at hand when rigging ends.
  for (const unit of means.units)
    searchStraight(search, pinned(search.standsOf.get(unit.apparatus.id) ?? []), room.straightM);
  searchStraight(search, pinned(marks), room.straightM);
  if (!draft) refineStraight(search, room.straightM, reached);
}

function seekTurned(search: Search, means: Means, room: LayoutRoom, draft: boolean): void {
  const { pins, marks, standsOf } = search;
  const stands = (unit: Unit): readonly Stand[] => standsOf.get(unit.apparatus.id) ?? [];
  const reached = within(room);
  const reachable = (all: readonly Stand[], pin: string | undefined): Stand[] => only(all, pin).filter(reached);
  const free = pins.anchor === undefined && pins.turn === undefined && pins.belay === undefined;
  const single = free ? firstOfEach(means.units, (unit) => [unit]) : means.units;
  const seek = (along: -1 | 1, bends: BendChoice): void => {
    const both = (turns: readonly Stand[], anchors: readonly Stand[]): void =>
      searchTurned(search, reachable(turns, pins.turn), reachable(anchors, pins.anchor), along, bends);
    for (const { turn, anchor } of unitPairs(means, free)) both(stands(turn), stands(anchor));
    for (const unit of single) {
      both(stands(unit), marks);
      both(marks, stands(unit));
    }
    both(marks, marks);
  };
  for (const along of [1, -1] as const) {
    seek(along, draft && free ? 'coarse' : 'near');
    if (draft) continue;
    if (search.podiums.turned[along].kept().length === 0) seek(along, 'wide');
    refineTurned(search, along, reached);
  }
}

/** Stands that lie on the road that was measured to be clear. */
const within =
  ({ beforeM = Infinity, afterM = Infinity }: LayoutRoom) =>
  ({ alongM }: Stand): boolean =>
    alongM >= -beforeM && alongM <= afterM;

const only = (stands: readonly Stand[], id: string | undefined): Stand[] =>
  id === undefined ? [...stands] : stands.filter(({ tie }) => tie.id === id);
