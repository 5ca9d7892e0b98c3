import { type AngleClass, callsFor } from '../book/index.ts';
import type { Descent } from '../descent/index.ts';
import { haulPeople, ropeBelowEdge } from '../rigging/index.ts';
import { kitArrivals, type Layout } from '../spots/index.ts';
import type { Resources } from './inputs.ts';
import type { NearMark } from './marks-part.ts';
import type { StudyCall, StudyClosure } from './study.ts';

interface CallQuestion {
  readonly planAs: AngleClass | null;
  readonly descent: Descent;
  readonly layout: Layout | null;
  readonly closure: StudyClosure | null;
  readonly marks: readonly NearMark[];
  readonly resources: Resources;
}

/** A mark this near to the site or its descent counts as a hazard of it, metres. */
const HAZARD_M = 40;

/** Whom to call: the rows of the response table that the site answers to. What is not known calls as if it were short. */
export function callPart(question: CallQuestion): StudyCall[] {
  const { planAs, descent, layout, closure, marks, resources } = question;
  const near = marks.filter(({ distanceM }) => distanceM <= HAZARD_M).map(({ kind }) => kind);
  const rows = callsFor(resources.response, {
    planAs,
    ropeShort: layout ? layout.fits.firstAlarm.fit !== 'yes' : ropeShortWithoutLayout(descent, resources),
    peopleShort: peopleShort(layout, resources),
    water: descent.line.why === 'water' || descent.crossings.some(({ kind }) => kind === 'water'),
    hazards: [...new Set<string>(near)],
    laneClosed: closure !== null && closure.lanesBlocked > 0,
  });
  return rows.map(({ resource, why, agency, phone, radio }) => ({ who: resource, why, agency, phone, radio }));
}

/** No two ropes of the first alarm reach from the edge to the litter. */
function ropeShortWithoutLayout(
  { rope, smoothedGroundLengthM }: Descent,
  { arrivals, kits, rates }: Resources,
): boolean {
  const needM = ropeBelowEdge(rope.lengthM, smoothedGroundLengthM, rates) + rates.tailsM;
  const ropes = kitArrivals(arrivals, kits).filter(({ tier }) => tier !== 'mutual aid');
  return ropes.flatMap(({ ropesM }) => ropesM).filter((ropeM) => ropeM >= needM).length < 2;
}

/** The least crew to raise, with the smallest haul team where no layout says, is not there by the first alarm. */
function peopleShort(layout: Layout | null, { arrivals, rates }: Resources): boolean {
  const alarm = arrivals.filter(({ tier }) => tier !== 'mutual aid').reduce((sum, { people }) => sum + people, 0);
  const least =
    layout?.people.leastRaise.count ??
    haulPeople({ haulTeam: rates.smallestTeam, planHigh: false, alternatingLane: true }, []).leastRaise.count;
  return alarm < least;
}
