import type { Apparatus } from '../book/index.ts';
import type { HoldSettings, PlanVector } from '../rigging/index.ts';
import { attachmentPlaces } from './attachment-places.ts';
import { nearestElement } from './bench-place.ts';
import { boxOf } from './box-hit.ts';
import { edgeClearance } from './edge-clearance.ts';
import type { Footprint } from './footprint.ts';
import { hazardHits, hazardsNear } from './hazard-hits.ts';
import { lanesBetween } from './lanes.ts';
import { leastHoldKn, steepestFall } from './spot-hold.ts';
import { pointOfPlace, type SpotPlace, spotId } from './spot-id.ts';
import { type SpotProblem, spotProblems } from './spot-problems.ts';
import type { Spot, SpotUse } from './spot-types.ts';
import { FAULT, type StandingScratch, standingFaults, standingScratch } from './standing-faults.ts';
import type { StandingRoom } from './standing-room.ts';

/** 90 % of an edge's error lies within this many sigmas. */
const BAND = 1.645;

/**
 * Works out one place for the apparatus of a room, whether or not it can stand there: what a search found, or what somebody
 * pinned. A place past the ends of the bench is shown at the end and refused.
 */
export function judgeSpot(room: StandingRoom, place: Omit<SpotPlace, 'apparatusId'>, hold: HoldSettings): Spot {
  const { ground, apparatus } = room;
  const { bench, traits, hazards, conditions } = ground;
  const footprint = footprintAt(room, place);
  const from = Math.round(place.stationM) - bench.firstStationM;
  const near = hazardsNear(hazards, footprint.x, footprint.y, apparatus.lengthM);
  const scratch = standingScratch();
  // Either way round it is the same ground, to the last digit.
  const outlined = { ...footprint, headingDeg: footprint.headingDeg % 180 };
  const box = boxOf(outlined);
  const onBench = place.stationM >= bench.firstStationM && place.stationM <= bench.firstStationM + bench.count - 1;
  const faults = standingFaults(room, outlined, from, near, scratch) | (onBench ? 0 : FAULT.offBench);
  const problems = told(faults, scratch);
  if (faults & FAULT.mark) {
    const hit = new Map(near.filter((hazard) => hazardHits(hazard, box)).map((hazard) => [hazard.id, hazard.kind]));
    for (const [id, kind] of hit) problems.push(spotProblems.mark(kind, id));
  }
  const middle = nearestElement(bench, footprint.x, footprint.y);
  const fall = faults & FAULT.offBench ? null : steepestFall(bench, scratch.firstElement, scratch.lastElement);
  const holdKn = fall === null ? 0 : leastHoldKn(apparatus, fall, conditions, hold);
  const rated = apparatus.attachments.some(({ ratedKn }) => ratedKn !== null && ratedKn > 0);
  if (!rated) problems.push(spotProblems.noAttachment());
  else if (holdKn <= 0) problems.push(spotProblems.noHold());
  const use = rated && holdKn > 0 ? haulUse(room, footprint, scratch) : 'blocker';
  if (use === 'blocker' && besideDescent(room, scratch)) problems.push(spotProblems.nearDescent());
  const clearance = edgeClearance(bench, box, scratch.firstElement, scratch.lastElement);
  if (clearance !== null && !(BAND * clearance.sigmaM <= clearance.distanceM - ground.settings.narrowLeastM)) {
    problems.push(spotProblems.edgeUncertain());
  }
  return {
    id: spotId({ ...place, apparatusId: apparatus.id }),
    apparatusId: apparatus.id,
    footprint,
    stationM: place.stationM,
    offsetM: place.offsetM,
    gradeDeg: finite(bench.gradeDeg[middle]),
    crossfallDeg: finite(bench.crossfallDeg[middle]),
    edgeClearanceM: clearance?.distanceM ?? null,
    lanes: lanesBetween(traits, scratch.leastAsideM, scratch.mostAsideM),
    fall,
    holdKn,
    use,
    problems,
    workable: problems.every(({ severity }) => severity !== 'unmet'),
  };
}

/** The same spot with the cab at the other end; for apparatus whose ends are alike. */
export function turnedRound(spot: Spot): Spot {
  const headingDeg = (spot.footprint.headingDeg + 180) % 360;
  return { ...spot, id: spotId({ ...spot, headingDeg }), footprint: { ...spot.footprint, headingDeg } };
}

/** True where both ends of an apparatus offer as many rated attachments. */
export function endsAlike({ attachments }: Pick<Apparatus, 'attachments'>): boolean {
  const rated = attachments.filter(({ ratedKn }) => ratedKn !== null && ratedKn > 0);
  return 2 * rated.filter(({ end }) => end === 'front').length === rated.length;
}

/** The outline of the room's apparatus at a place, local metres; past the ends of the bench that of its end. */
export function footprintAt(
  { ground: { bench }, apparatus }: StandingRoom,
  { stationM, offsetM, headingDeg }: Omit<SpotPlace, 'apparatusId'>,
): Footprint {
  const last = bench.firstStationM + bench.count - 1;
  const at = new Float64Array(2);
  pointOfPlace(bench, { stationM: Math.min(last, Math.max(bench.firstStationM, stationM)), offsetM }, at);
  return { x: at[0], y: at[1], headingDeg, lengthM: apparatus.lengthM, widthM: apparatus.widthM };
}

function told(faults: number, scratch: StandingScratch): SpotProblem[] {
  const problems: SpotProblem[] = [];
  if (faults & FAULT.offBench) problems.push(spotProblems.offBench());
  if (faults & FAULT.setback) problems.push(spotProblems.setback(scratch.rule));
  if (faults & FAULT.slope) problems.push(spotProblems.slope());
  if (faults & FAULT.edgeArea) problems.push(spotProblems.edgeArea());
  if (faults & FAULT.unreachable) problems.push(spotProblems.unreachable());
  if (faults & FAULT.shoulder) problems.push(spotProblems.shoulder());
  if (faults & FAULT.narrow) problems.push(spotProblems.narrow());
  if (faults & FAULT.slopeCheck) problems.push(spotProblems.slopeCheck());
  return problems;
}

/** An anchor needs a field before it; a change of direction stands near the descent. */
function haulUse({ ground, apparatus }: StandingRoom, footprint: Footprint, scratch: StandingScratch): SpotUse {
  const { bench, site, settings } = ground;
  if (site === null) return 'either';
  const i = siteElement(site.stationM, bench.firstStationM, bench.count);
  const side = site.side < 0 ? bench.left : bench.right;
  const nearest = Math.min(
    ...rated(apparatus, footprint).map(({ x, y }) => Math.hypot(x - side.edgeX[i], y - side.edgeY[i])),
  );
  if (nearest < settings.leastFieldM) return 'turn';
  return gapM(i, scratch) <= settings.freeAtEdgeM ? 'either' : 'anchor';
}

const rated = (apparatus: Apparatus, footprint: Footprint): PlanVector[] =>
  attachmentPlaces(apparatus, footprint).filter(({ point }) => point.ratedKn !== null && point.ratedKn > 0);

function besideDescent({ ground: { bench, site, settings } }: StandingRoom, scratch: StandingScratch): boolean {
  if (site === null) return false;
  return gapM(siteElement(site.stationM, bench.firstStationM, bench.count), scratch) < settings.blockerAsideM;
}

/** Along the road from the site to the nearest part of the footprint, metres, rounded down. */
const gapM = (i: number, { firstElement, lastElement }: StandingScratch): number =>
  Math.max(0, firstElement - i, i - lastElement);

const siteElement = (stationM: number, first: number, count: number): number =>
  Math.max(0, Math.min(count - 1, Math.round(stationM) - first));

const finite = (value: number): number | null => (Number.isFinite(value) ? value : null);
