import type { AngleRule } from '../book/index.ts';
import {
  type CrossingKind,
  crossingsOn,
  type DescentLine,
  groundLength,
  type Hill,
  lineBetween,
  type Profile,
  profileAlong,
  type Surroundings,
  sampleOfLine,
  stepsOn,
} from '../descent/index.ts';

/** A road or trail on the straight line of the descent, below its end. */
export interface CrossingBelow {
  readonly kind: Extract<CrossingKind, 'road' | 'trail'>;
  /** From the edge, horizontal and along the ground, metres. */
  readonly distanceM: number;
  readonly groundM: number;
}

/** How far below a patient a road or trail is looked for, metres (practice). */
const BELOW_M = 100;
/** Ground that rises by more than this on the way stops a lowered litter, metres (practice). */
const RISE_M = 0.5;

/**
 * Roads and trails that a patient can be lowered on to: on the line of the descent beyond the patient point, as far as the ground
 * falls without a step and without a stretch that the rule calls high. Nothing of it enters the angle class of the site.
 */
export function crossingsBelow(
  hill: Hill,
  line: DescentLine,
  around: Surroundings,
  rule: Pick<AngleRule, 'highMinDeg'>,
): CrossingBelow[] {
  const { start, direction, lengthM } = line;
  const farM = lengthM + BELOW_M;
  const end = { x: start.x + farM * direction.x, y: start.y + farM * direction.y };
  const longer = lineBetween(start, end, 'limit')!;
  const profile = profileAlong(hill, longer);
  const stepsM = stepsOn(hill, sampleOfLine(hill, longer), around).map(({ distanceM }) => distanceM);
  const reachM = Math.min(fallsTo(profile, lengthM, rule.highMinDeg), ...stepsM.filter((at) => at >= lengthM));
  return crossingsOn(longer, profile, around).flatMap(({ kind, distanceM }) =>
    (kind === 'road' || kind === 'trail') && distanceM >= lengthM && distanceM <= reachM
      ? [{ kind, distanceM, groundM: groundLength(upTo(profile, distanceM)) }]
      : [],
  );
}

/** Distance from the edge up to which the ground beyond `fromM` keeps falling, and not steeply, metres. */
function fallsTo({ distanceM, elevationM, angleDeg }: Profile, fromM: number, highMinDeg: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (let k = 0; k < distanceM.length; k++) {
    if (distanceM[k] < fromM) continue;
    if (!(elevationM[k] <= least + RISE_M && angleDeg[k] < highMinDeg)) return distanceM[k];
    least = Math.min(least, elevationM[k]);
  }
  return distanceM.at(-1) ?? 0;
}

function upTo(profile: Profile, toM: number): Profile {
  const count = profile.distanceM.findIndex((d) => d > toM);
  const last = count < 0 ? profile.distanceM.length : count;
  return {
    ...profile,
    distanceM: profile.distanceM.subarray(0, last),
    elevationM: profile.elevationM.subarray(0, last),
  };
}
