import type { Apparatus } from '../book/index.ts';
import type { HoldSettings } from '../rigging/index.ts';
import { placeOnBench, roadAzimuthDeg } from './bench-place.ts';
import { outline } from './footprint.ts';
import { hazardsNear } from './hazard-hits.ts';
import type { Hazard } from './hazards.ts';
import { endsAlike, footprintAt, judgeSpot, turnedRound } from './judge-spot.ts';
import { laneCount, lanesBetween } from './lanes.ts';
import type { SpotPlace } from './spot-id.ts';
import type { Spot } from './spot-types.ts';
import { REFUSES, type StandingScratch, standingFaults, standingScratch } from './standing-faults.ts';
import type { StandingGround } from './standing-ground.ts';
import { type StandingRoom, standingRoom } from './standing-room.ts';
import { type Found, usefulSpots } from './useful-spots.ts';

/** Angles across the road, degrees, gentlest first; nose-in is square to it. */
const NOSE_IN_DEG = 90;
const ANGLES_DEG = [0, 15, -15, 30, -30, NOSE_IN_DEG];
/** Near the site, between the outermost and the innermost place of a station, one every so many decimetres; all are kept. */
const STEP_DM = 5;
/** Near enough for a change of direction: so far from the site's station to the end of an apparatus, metres. */
const TURN_REACH_M = 4.5;
/** Farther along the road than this from the site every second station is enough, metres. */
const EACH_STATION_M = 30;
/** The outermost place may lie this far inside its first estimate on bends and tapers, decimetres. */
const SEEK_DM = 3;
/** Apparatus that holds nothing is placed every so many metres. */
const BLOCKER_STEP_M = 5;

/** Stations, whole metres, at which places are sought: a draft leaves most of them out. */
export type Stations = (stationM: number) => boolean;

const everyStation: Stations = () => true;

/**
 * Where each apparatus of a fleet can stand within reach of the site (all along the bench without one): parallel to the
 * road, up to 30° across it where no parallel one fits, nose-in, either way round, at whole metres of station, decimetres of
 * offset and degrees of heading. Only workable spots, thinned to the useful ones of each apparatus and metre; in order of fleet and station.
 * None on a bench of assumed width. At fewer stations the spots are those of them all that stand there.
 */
export function candidateSpots(
  ground: StandingGround,
  fleet: readonly Apparatus[],
  hold: HoldSettings,
  at: Stations = everyStation,
): Spot[] {
  const about = { ...ground, hazards: hazardsAbout(ground) };
  return fleet.flatMap((apparatus) => spotsOf(standingRoom(about, apparatus), hold, at));
}

function spotsOf(room: StandingRoom, hold: HoldSettings, at: Stations): Spot[] {
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
    if (!at(bench.firstStationM + i)) continue;
    if (blocker && (bench.firstStationM + i) % BLOCKER_STEP_M !== 0) continue;
    const asideM = site === null ? 0 : Math.abs(i - middle);
    if (asideM > EACH_STATION_M && i % 2 !== 0) continue;
    const near = site !== null && !blocker && asideM <= room.apparatus.lengthM / 2 + TURN_REACH_M;
    if (!room.reachable[i] || !(room.leftM[i] <= room.rightM[i])) continue;
    const found = foundAt(room, i, near, scratch);
    for (const place of usefulSpots(found, site?.side ?? 1, blocker, near)) {
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

/** Marks and mapped features that any station of a search may have near: those of a whole district are sieved once. */
function hazardsAbout({ bench, hazards, site, settings }: StandingGround): readonly Hazard[] {
  if (site === null) return hazards;
  const i = Math.max(0, Math.min(bench.count - 1, Math.round(site.stationM) - bench.firstStationM));
  return hazardsNear(hazards, bench.x[i], bench.y[i], settings.reachM + WELL_BEYOND_M);
}

/** Longer than any apparatus and wider than any bench by a multiple, metres. */
const WELL_BEYOND_M = 80;

function foundAt(room: StandingRoom, i: number, dense: boolean, scratch: StandingScratch): Found[] {
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
    const between = besideLanes(room, i, span);
    // Among marks a place may fit anywhere between.
    searchOffsets(span, dense || hazards.length > 0 ? [...new Set([...between, ...everyStep(span)])] : between, test);
  }
  return found;
}

/** Tries both ends of a span of offsets, a little inward where they fail, and what lies between; in decimetres. */
function searchOffsets({ first, last }: Span, between: readonly number[], test: (dm: number) => boolean): void {
  let low = first;
  while (low <= Math.min(last, first + SEEK_DM) && !test(low)) low++;
  let high = last;
  while (high > low && high >= last - SEEK_DM && !test(high)) high--;
  for (const dm of between) if (dm > low && dm < high) test(dm);
}

const everyStep = ({ first, last }: Span): number[] =>
  Array.from({ length: Math.floor((last - first) / STEP_DM) }, (_, k) => first + (k + 1) * STEP_DM);

/** Offsets at which the outline just leaves a lane free, on either side of each line between lanes, and half-way. */
function besideLanes({ ground: { bench, traits } }: StandingRoom, i: number, span: Span): number[] {
  const lanes = laneCount(traits);
  const half = traits.carriageway.valueM / 2;
  const middle = Math.round((span.first + span.last) / 2);
  const offsets = [middle];
  for (let k = 0; k <= lanes; k++) {
    const lineM = bench.shiftM[i] - half + (2 * half * k) / lanes;
    offsets.push(Math.floor(10 * (lineM - span.rightM) + 1e-6), Math.ceil(10 * (lineM + span.leftM) - 1e-6));
  }
  return [...new Set(offsets)];
}

/** Offsets at which an outline keeps its limits, in decimetres, and how far it reaches to the left and right of its own, metres. */
interface Span {
  readonly first: number;
  readonly last: number;
  readonly leftM: number;
  readonly rightM: number;
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
): Span | null {
  const { leftM, rightM, ground } = room;
  const { bench } = ground;
  const trial = (leftM[i] + rightM[i]) / 2;
  const points = outline(footprintAt(room, { ...place, offsetM: trial }), 1);
  let low = Number.NEGATIVE_INFINITY;
  let high = Number.POSITIVE_INFINITY;
  let leftOut = 0;
  let rightOut = 0;
  for (let k = 0; k < points.length; k += 2) {
    if (!placeOnBench(bench, points[k], points[k + 1], i, at)) return null;
    const j = Math.floor(at[0]);
    const next = Math.min(j + 1, bench.count - 1);
    const aside = at[1] - trial;
    leftOut = Math.max(leftOut, -aside);
    rightOut = Math.max(rightOut, aside);
    low = Math.max(low, leftM[j] - aside, leftM[next] - aside);
    high = Math.min(high, rightM[j] - aside, rightM[next] - aside);
  }
  const first = Math.ceil(10 * low - 1e-6);
  const last = Math.floor(10 * high + 1e-6);
  return first <= last ? { first, last, leftM: leftOut, rightM: rightOut } : null;
}
