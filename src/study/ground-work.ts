import type { LonLat } from '../geo/index.ts';
import {
  type Bench,
  benchAround,
  type RoadPlace,
  readRoadTags,
  roadAt,
  routePart,
  type SightBothWays,
  sightAlong,
  UNDER,
} from '../road/index.ts';
import type { Stations } from '../spots/index.ts';
import { type Ground, isScreeningOnly } from '../terrain/index.ts';
import { ok, type Result } from '../units/index.ts';
import { applyField } from './field/index.ts';
import type { GroundInputs, StudyInputs } from './inputs.ts';
import { withLikelyKind } from './likely-kind.ts';
import { outdatedGround } from './outdated-ground.ts';
import { type Side, type SideWork, workUpSide } from './side.ts';
import { standingAt, standsFor } from './standing.ts';
import type { GroundWork } from './work.ts';

/** Sight is followed 300 m along the road; its line is taken a little longer, metres. */
const SIGHT_LINE_M = 310;

/**
 * Cuts the sections and follows the fall line: everything that stays as it is when a spot is pinned, the people or the weather
 * change. Where apparatus can stand is not sought yet. Refuses where no road lies within 50 m or the ground has no data at the road.
 *
 * @param kept the bench of this road on this ground, found for a place near by: for a draft, as sections there may differ by centimetres
 */
export function workUpGround(given: StudyInputs, kept?: Bench): Result<GroundWork> {
  const { at, patient, events = [] } = given;
  const inputs = { ...given, ground: outdatedGround(given.ground, events, patient ? [at, patient] : [at]) };
  const place = roadAt(inputs.roads, inputs.at);
  if (!place.ok) return place;
  const found = kept ? ok(kept) : benchAround(inputs.roads, place.value, inputs.ground, inputs.marks);
  if (!found.ok) return found;
  const bench = found.value;
  const i = stationIndex(bench, place.value);
  const { ground, doubted } = withLikelyKind(inputs.ground, bench, i);
  const taken = { ...inputs, ground };
  const patientSide = inputs.patient ? sideOf(bench, i, inputs) : null;
  const named = inputs.side ?? patientSide;
  const works = (named ? [named] : (['left', 'right'] as const)).map((side) =>
    workUpSide(taken, bench, place.value, i, side),
  );
  const side = works.reduce((best, work) => (isWorse(work, best) ? work : best));
  const older = outdatedGround(ground, events, pathDown(ground, at, side));
  if (older !== ground) return workUpGround({ ...inputs, ground: older }, kept);
  const traits = readRoadTags(inputs.roads.network.ways[place.value.way].tags);
  const structure = bench.under[i] === UNDER.structure;
  const work = {
    ...{ inputs: taken, ground, doubted, place: place.value, traits, bench, i, structure, side },
    bothDrop: works.length > 1 && works.every(({ descent }) => descent),
    sight: side.descent && !structure ? sightHere(ground, place.value, bench) : null,
    standing: null,
    field: null,
    computedBench: bench,
  };
  return applyField(work, pathDown(ground, at, side));
}

/** The site and its descent, as far as it is known. */
function pathDown({ plane }: Ground, at: LonLat, { descent }: SideWork): LonLat[] {
  if (!descent) return [at];
  const { start, end } = descent.line;
  return [at, plane.toLonLat(start), plane.toLonLat(end)];
}

/**
 * The same ground with where apparatus can stand on it, sought only where it is not known yet for these conditions and this
 * fleet; a draft at some `stations` alone, and its places are nobody's but its own.
 */
export function standUp(
  work: GroundWork,
  inputs: Pick<StudyInputs, 'conditions' | 'resources'>,
  stations?: Stations,
): GroundWork {
  const { side, structure, bench, standing } = work;
  const nowhere = !side.descent || structure || bench.how === 'assumed' || isScreeningOnly(side.info);
  if (nowhere || (standing && standsFor(standing, inputs))) return work;
  return { ...work, standing: standingAt(work, inputs, stations) };
}

function sightHere(ground: Ground, { route, stationM }: RoadPlace, bench: Bench): SightBothWays {
  const line = routePart(route, ground.plane, stationM - SIGHT_LINE_M, stationM + SIGHT_LINE_M);
  return sightAlong(ground, line, bench, stationM);
}

function stationIndex(bench: Bench, place: RoadPlace): number {
  const i = Math.round(place.stationM) - bench.firstStationM;
  return Math.min(bench.count - 1, Math.max(0, i));
}

/** The side of the road on which the patient point lies. */
function sideOf(bench: Bench, i: number, { ground, patient }: GroundInputs): Side {
  const { x, y } = ground.plane.toLocal(patient!);
  const right = (x - bench.x[i]) * bench.normalX[i] + (y - bench.y[i]) * bench.normalY[i];
  return right >= 0 ? 'right' : 'left';
}

/** The side to plan for where none was named: the one with the higher `planAs`, then the larger drop. */
function isWorse(a: SideWork, b: SideWork): boolean {
  if (a === b) return false;
  const rank = (work: SideWork): number =>
    work.descent ? 1 + ['low', 'steep', 'high'].indexOf(work.descent.angle?.planAs ?? 'low') : 0;
  if (rank(a) !== rank(b)) return rank(a) > rank(b);
  return (a.descent?.dropM ?? 0) > (b.descent?.dropM ?? 0);
}
