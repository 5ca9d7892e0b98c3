import type { AngleRule } from '../book/index.ts';
import type { PointM } from '../geo/index.ts';
import { azimuthGap, azimuthOf } from '../units/index.ts';
import { type DescentAngle, descentAngle, meanAngle } from './angle.ts';
import { type Crossing, crossingsOn } from './crossings.ts';
import { type DescentLine, descentAlong, lineBetween } from './descent-line.ts';
import { type FallLine, fallLine } from './fall-line.ts';
import { groundLength, smoothedGroundLength } from './ground-length.ts';
import { type Hill, heightAtPoint } from './hill.ts';
import { lipAngle } from './lip-angle.ts';
import { nearbyMaxAngle } from './nearby-angle.ts';
import { type Behind, groundBehind, type Profile, profileAlong } from './profile.ts';
import { groundToLitter, type RopeLine, ropeLine } from './rope-line.ts';
import { sightLost } from './sight-lost.ts';
import { sampleOfFallLine, sampleOfLine } from './slope-sample.ts';
import type { Step } from './step.ts';
import { stepsOn } from './steps.ts';
import type { Surroundings } from './surroundings.ts';
import { nearestOnEdge, upSlopeToEdge } from './up-line.ts';

/** What a descent is worked out from; positions in local metres, vectors of unit length. */
export interface DescentInput {
  readonly hill: Hill;
  /** The edge at the site, and the direction away from the road there. */
  readonly edge: PointM;
  readonly outward: PointM;
  /** The edge along the road, x, y pairs; needed to begin a descent above a patient point. */
  readonly edgeLine: Float64Array;
  readonly patient: PointM | null;
  readonly around: Surroundings;
  readonly rule: AngleRule;
  /** How far back over the bench ground is told, metres. */
  readonly behindM: number;
}

/** Everything about one way down; distances in metres from the edge, horizontal. */
export interface Descent {
  readonly line: DescentLine;
  readonly dropM: number;
  readonly endElevationM: number;
  readonly groundLengthM: number;
  /** Ground length of the profile averaged over 3 m, for rope lengths. */
  readonly smoothedGroundLengthM: number;
  readonly rope: RopeLine;
  readonly crossings: readonly Crossing[];
  readonly steps: readonly Step[];
  readonly sightLostAtM: number | null;
  readonly profile: Profile;
  readonly behind: Behind;
  readonly lipAngleDeg: number;
  readonly meanDeg: number;
  /** Null where the descent is under 2 m long. */
  readonly angle: DescentAngle | null;
  /** Steepest window on this line and its parallels up to 3 m to either side, degrees; never under the governing angle. */
  readonly nearbyMaxDeg: number;
  /** Angle between the line to a patient point and the fall line at the edge, degrees; null without one. */
  readonly sidePullDeg: number | null;
  /** The up-slope line from the patient point meets no edge: the nearest point of the edge was taken. */
  readonly nearestEdgeTaken: boolean;
  /** The fall line as traced, and its figures as a whole where the descent ends at a bend of it. */
  readonly fall: FallLine;
  readonly whole: WholeFall | null;
}

export interface WholeFall {
  readonly horizontalM: number;
  readonly dropM: number;
  readonly ropeLineM: number;
  readonly steps: readonly Step[];
  readonly angle: DescentAngle | null;
}

/** Length of the fall line over which its direction is compared with that of a side pull, metres. */
const SIDE_PULL_BASE_M = 5;

/** Works out the descent of a site; null where the edge has no data or the ground does not fall away there at all. */
export function workUpDescent(input: DescentInput): Descent | null {
  const { hill, around, patient } = input;
  const found = patient ? edgeAbove(input, patient) : { start: input.edge, nearestTaken: false };
  const fall = fallLine(hill, found.start, input.outward, around);
  const line = patient ? lineBetween(found.start, patient, 'patient point') : descentAlong(fall);
  if (!line || !Number.isFinite(heightAtPoint(hill, line.start.x, line.start.y))) return null;
  const measured = endOfData(hill, line);
  if (!measured) return null;
  const profile = profileAlong(hill, measured);
  const behind = groundBehind(hill, measured, input.behindM);
  const sample = sampleOfLine(hill, measured);
  const steps = stepsOn(hill, sample, around);
  const angle = descentAngle(sample, angleOptions(input, steps.length > 0));
  const endElevationM = profile.elevationM[profile.elevationM.length - 1];
  const dropM = profile.elevationM[0] - endElevationM;
  const alongEdge = { x: -input.outward.y, y: input.outward.x };
  return {
    line: measured,
    dropM,
    endElevationM,
    groundLengthM: groundLength(profile),
    smoothedGroundLengthM: smoothedGroundLength(profile),
    rope: ropeLine(profile, groundToLitter),
    crossings: crossingsOn(measured, profile, around),
    steps,
    sightLostAtM: sightLost(profile),
    profile,
    behind,
    lipAngleDeg: lipAngle(profile, behind),
    meanDeg: meanAngle(dropM, measured.lengthM),
    angle,
    nearbyMaxDeg: Math.max(nearbyMaxAngle(hill, measured, alongEdge), angle?.governingDeg ?? 0),
    sidePullDeg: patient ? sidePull(fall, measured) : null,
    nearestEdgeTaken: found.nearestTaken,
    fall,
    whole: measured.bends ? wholeFall(input, fall) : null,
  };
}

function angleOptions({ hill, rule }: DescentInput, step: boolean) {
  return { cellM: hill.cellM, sigmaM: hill.sigmaM, screeningOnly: hill.screeningOnly, rule, step };
}

function edgeAbove(
  { hill, edgeLine, outward }: DescentInput,
  patient: PointM,
): { start: PointM; nearestTaken: boolean } {
  const met = upSlopeToEdge(hill, patient, { x: -outward.x, y: -outward.y }, edgeLine);
  return met ? { start: met, nearestTaken: false } : { start: nearestOnEdge(patient, edgeLine), nearestTaken: true };
}

/** The descent up to the last point with data on it: a line to a patient point may cross a hole. */
function endOfData(hill: Hill, line: DescentLine): DescentLine | null {
  const stepM = Math.min(0.5, hill.cellM / 2);
  const count = Math.floor(line.lengthM / stepM) + 1;
  const heights = new Float64Array(count);
  const { start, direction } = line;
  hill.heights(start.x, start.y, direction.x * stepM, direction.y * stepM, count, heights, 0);
  const missing = heights.findIndex((z) => !Number.isFinite(z));
  if (missing < 0 && Number.isFinite(heightAtPoint(hill, line.end.x, line.end.y))) return line;
  const d = ((missing < 0 ? count : missing) - 1) * stepM;
  return lineBetween(start, { x: start.x + d * direction.x, y: start.y + d * direction.y }, 'no data');
}

function sidePull(fall: FallLine, line: DescentLine): number | null {
  const last = Math.min(fall.x.length - 1, Math.round(SIDE_PULL_BASE_M / fall.stepM));
  if (last < 1) return null;
  return azimuthGap(azimuthOf(fall.x[last] - fall.x[0], fall.y[last] - fall.y[0]), line.azimuthDeg);
}

function wholeFall(input: DescentInput, fall: FallLine): WholeFall {
  const { hill, around } = input;
  const last = fall.x.length - 1;
  const distanceM = Float64Array.from(fall.heightM, (_, i) => i * fall.stepM);
  const sample = sampleOfFallLine(hill, fall);
  const steps = stepsOn(hill, sample, around);
  return {
    horizontalM: sample.lengthM,
    dropM: fall.heightM[0] - fall.heightM[last],
    ropeLineM: ropeLine({ distanceM, elevationM: fall.heightM }, groundToLitter).lengthM,
    steps,
    angle: descentAngle(sample, angleOptions(input, steps.length > 0)),
  };
}
