import type { Apparatus } from '../book/index.ts';
import type { HoldSettings } from '../rigging/index.ts';
import { placeOnBench, roadAzimuthDeg } from './bench-place.ts';
import { outline } from './footprint.ts';
import { hazardsNear } from './hazard-hits.ts';
import { endsAlike, footprintAt, judgeSpot, turnedRound } from './judge-spot.ts';
import { lanesBetween } from './lanes.ts';
import type { SpotPlace } from './spot-id.ts';
import type { Spot } from './spot-types.ts';
import { REFUSES, type StandingScratch, standingFaults, standingScratch } from './standing-faults.ts';
import type { StandingGround } from './standing-ground.ts';
import { type StandingRoom, standingRoom } from './standing-room.ts';
import { type Found, usefulSpots } from './useful-spots.ts';

/** Angles across the road, degrees, gentlest first; nose-in is square to it. */
const NOSE_IN_DEG = 90;
const ANGLES_DEG = [0, 15, -15, 30, -30, NOSE_IN_DEG];
/** Between the outermost and the innermost place of a station, one every so many decimetres. */
const STEP_DM = 5;
/** The outermost place may lie this far inside its first estimate on bends and tapers, decimetres. */
const SEEK_DM = 3;
/** Apparatus that holds nothing is placed every so many metres. */
const BLOCKER_STEP_M = 5;

/**
 * Where each apparatus of a fleet can stand within reach of the site (all along the bench without one): parallel to the
 * road, up to 30° across it where no parallel one fits, nose-in, either way round, at whole metres of station, decimetres of
 * offset and degrees of heading. Only workable spots, thinned to the useful ones of each apparatus and metre; in order of fleet and station.
 * None on a bench of assumed width.
 */
export function candidateSpots(ground: StandingGround, fleet: readonly Apparatus[], hold: HoldSettings): Spot[] {
  return fleet.flatMap((apparatus) => spotsOf(standingRoom(ground, apparatus), hold));
}

function spotsOf(room: StandingRoom, hold: HoldSettings): Spot[] {
  const { bench, site, settings } = room.ground;
  const scratch = standingScratch();
  const blocker = !room.apparatus.attachments.some(({ ratedKn }) => ratedKn !== null && ratedKn > 0);
  const alike = endsAlike(room.apparatus);
  const middle = site === null ? bench.count / 2 : Math.round(site.stationM) - bench.firstStationM;
  const reach = site === null ? bench.count : settings.reachM;
  const from = Math.max(0, Math.ceil(middle - reach));
  const to = Math.min(bench.count - 1, Math.floor(middle + reach));
  const spots: Spot[] = [];
  for (let i = from; i <= to; i++) {
    if (blocker && (bench.firstStationM + i) % BLOCKER_STEP_M !== 0) continue;
    if (!room.reachable[i] || !(room.leftM[i] <= room.rightM[i])) continue;
    const found = foundAt(room, i, scratch);
    for (const place of usefulSpots(found, site?.side ?? 1, blocker)) {
      const spot = judgeSpot(room, place, hold);
      if (!spot.workable) continue;
      spots.push(spot);
      if (blocker) continue;
      const other = { ...place, headingDeg: (place.headingDeg + 180) % 360 };
      spots.push(alike ? turnedRound(spot) : judgeSpot(room, other, hold));
    }
  }
  return spots;
}

function foundAt(room: StandingRoom, i: number, scratch: StandingScratch): Found[] {
  const { ground, apparatus, leftM, rightM } = room;
  const { bench, settings } = ground;
  const half = Math.max(Math.abs(leftM[i]), Math.abs(rightM[i]));
  const hazards = hazardsNear(ground.hazards, bench.x[i], bench.y[i], half + apparatus.lengthM);
  const azimuth = roadAzimuthDeg(bench, i);
  const found: Found[] = [];
  for (const acrossDeg of ANGLES_DEG) {
    const slanted = acrossDeg !== 0 && acrossDeg !== NOSE_IN_DEG;
    // A slanted outline is wider across the road: it takes no fewer lanes than a parallel one that fits.
    if (slanted && (found.length > 0 || Math.abs(acrossDeg) > settings.acrossMostDeg)) continue;
    if (acrossDeg === NOSE_IN_DEG && rightM[i] - leftM[i] < apparatus.lengthM) continue;
    const headingDeg = Math.round(azimuth + acrossDeg) % 360;
    const place = { stationM: bench.firstStationM + i, headingDeg };
    const span = offsetsThatFit(room, i, place, scratch.at);
    if (span === null) continue;
    const test = (dm: number): boolean => {
      const at = { ...place, offsetM: dm / 10 };
      const footprint = footprintAt(room, at);
      const faults = standingFaults(room, footprint, i, hazards, scratch);
      if (faults & REFUSES) return false;
      const { leastAsideM, mostAsideM } = scratch;
      const { blocked } = lanesBetween(ground.traits, leastAsideM, mostAsideM);
      found.push({ ...at, acrossDeg, faults, lanesBlocked: blocked });
      return true;
    };
    searchOffsets(span, test);
  }
  return found;
}

/** Tries both ends of a span of offsets, a little inward where they fail, and steps between; in decimetres. */
function searchOffsets([first, last]: readonly [number, number], test: (dm: number) => boolean): void {
  let low = first;
  while (low <= Math.min(last, first + SEEK_DM) && !test(low)) low++;
  let high = last;
  while (high > low && high >= last - SEEK_DM && !test(high)) high--;
  for (let dm = Math.ceil((low + 1) / STEP_DM) * STEP_DM; dm < high; dm += STEP_DM) test(dm);
}

/**
 * First estimate of the offsets, in decimetres, at which an outline keeps its limits: from where its points lie when it
 * stands half-way between the limits of its station. Null where none does.
 */
function offsetsThatFit(
  room: StandingRoom,
  i: number,
  place: Pick<SpotPlace, 'stationM' | 'headingDeg'>,
  at: Float64Array,
): [number, number] | null {
  const { leftM, rightM, ground } = room;
  const { bench } = ground;
  const trial = (leftM[i] + rightM[i]) / 2;
  const points = outline(footprintAt(room, { ...place, offsetM: trial }), 1);
  let low = Number.NEGATIVE_INFINITY;
  let high = Number.POSITIVE_INFINITY;
  for (let k = 0; k < points.length; k += 2) {
    if (!placeOnBench(bench, points[k], points[k + 1], i, at)) return null;
    const j = Math.floor(at[0]);
    const next = Math.min(j + 1, bench.count - 1);
    const aside = at[1] - trial;
    low = Math.max(low, leftM[j] - aside, leftM[next] - aside);
    high = Math.min(high, rightM[j] - aside, rightM[next] - aside);
  }
  const span: [number, number] = [Math.ceil(10 * low - 1e-6), Math.floor(10 * high + 1e-6)];
  return span[0] <= span[1] ? span : null;
}
