import type { QuantityName } from '../../book/index.ts';
import {
  type Descent,
  type DescentAngle,
  LEAST_STEP_M,
  meanAngle,
  type Profile,
  type Step,
} from '../../descent/index.ts';
import type { FieldQuantity } from './field-value-work.ts';
import { type AngleCautions, gentlerAngle, steeperAngle, steeperPlan } from './measured-angle.ts';

/** A lip that hangs over is planned as an upright one: no pull is larger than there, degrees. */
const STEEPEST_LIP_DEG = 90;

type Taken = (quantity: QuantityName) => FieldQuantity | null;

/**
 * A descent with what was read of it: lip, drop, length, steps and governing angle. Lengths grow and shrink in one share; a longer drop
 * needs at least its straight line, and a slope is at least as steep as its mean. `taken`: the quantity where its reading counts.
 */
export function measuredDescent(descent: Descent, taken: Taken, screeningOnly: boolean): Descent {
  const lip = taken('lipAngleDeg');
  const withLip = lip ? { ...descent, lipAngleDeg: Math.min(STEEPEST_LIP_DEG, lip.counts.value!) } : descent;
  const withSteps = measuredSteps(measuredLengths(withLip, taken), taken);
  const measured = measuredSlope(withSteps, taken, screeningOnly);
  return { ...measured, whole: wholeWith(descent, measured, screeningOnly) };
}

function measuredLengths(descent: Descent, taken: Taken): Descent {
  const drop = taken('dropM');
  const length = taken('groundLengthM');
  if (!drop && !length) return descent;
  const { line, groundLengthM } = descent;
  const dropM = drop ? drop.counts.value! : descent.dropM;
  const leastM = drop && !drop.counts.betters ? Math.hypot(line.lengthM, dropM) : 0;
  const share = Math.max(length ? length.counts.value! : groundLengthM, leastM) / groundLengthM;
  return {
    ...descent,
    dropM,
    meanDeg: meanAngle(dropM, line.lengthM),
    groundLengthM: groundLengthM * share,
    smoothedGroundLengthM: descent.smoothedGroundLengthM * share,
    rope: { ...descent.rope, lengthM: descent.rope.lengthM * share },
  };
}

/** The fall line as a whole is never gentler, shorter or less high than by what was read of its part. */
function wholeWith(before: Descent, { angle, rope, dropM, steps }: Descent, screeningOnly: boolean): Descent['whole'] {
  const { whole } = before;
  if (!whole) return null;
  const read = steps.filter(({ source }) => source === 'measured');
  const allSteps = [...whole.steps, ...read].sort((a, b) => a.distanceM - b.distanceM);
  const steeper = angle && before.angle && angle.governingDeg >= before.angle.governingDeg ? angle : null;
  const cautions = { step: allSteps.length > 0, screeningOnly };
  return {
    ...whole,
    ropeLineM: whole.ropeLineM + Math.max(0, rope.lengthM - before.rope.lengthM),
    dropM: whole.dropM + Math.max(0, dropM - before.dropM),
    steps: allSteps,
    angle: whole.angle && steeper ? steeperWhole(whole.angle, steeper, cautions) : whole.angle,
  };
}

function steeperWhole(whole: DescentAngle, part: DescentAngle, cautions: AngleCautions): DescentAngle {
  const angle =
    part.governingDeg > whole.governingDeg
      ? steeperAngle(whole, part.governingDeg, part.governingSigmaDeg, cautions)
      : whole;
  return { ...angle, planAs: steeperPlan(angle.planAs, part.planAs) };
}

/** A step that was read stands where it was read, else at the governing stretch; one under 1.5 m is none. */
function measuredSteps(descent: Descent, taken: Taken): Descent {
  const read = taken('stepHeightM');
  if (!read) return descent;
  const heightM = read.counts.value!;
  if (read.counts.betters) {
    const lower = (step: Step): Step => ({ ...step, heightM: Math.min(step.heightM, heightM) });
    const steps = descent.steps.map((step) => (step.source === 'ground' ? lower(step) : step));
    return { ...descent, steps: steps.filter((step) => step.heightM >= LEAST_STEP_M) };
  }
  if (heightM < LEAST_STEP_M) return descent;
  const distanceM = read.worst.stretchM?.from ?? Math.max(0, descent.angle?.stretchM[0] ?? 0);
  const step: Step = { distanceM: Math.min(distanceM, descent.line.lengthM), heightM, source: 'measured' };
  const steps = [...descent.steps, step].sort((a, b) => a.distanceM - b.distanceM);
  return { ...descent, steps, angle: descent.angle && { ...descent.angle, planAs: 'high' } };
}

function measuredSlope(descent: Descent, taken: Taken, screeningOnly: boolean): Descent {
  if (!descent.angle) return descent;
  const cautions = { step: descent.steps.length > 0, screeningOnly };
  const read = taken('angleDeg');
  let { angle, profile } = descent;
  if (read?.counts.betters) {
    const valueDeg = read.counts.value!;
    const elsewhere = steepestElsewhere(profile, angle.stretchM);
    angle = gentlerAngle(angle, valueDeg, read.sigma, elsewhere, cautions);
    profile = capped(profile, angle.governingDeg);
  } else if (read) {
    angle = steeperAngle(angle, read.counts.value!, read.sigma, cautions);
  }
  const drop = taken('dropM');
  if (drop && !drop.counts.betters && descent.meanDeg > angle.governingDeg)
    angle = steeperAngle(angle, descent.meanDeg, angle.governingSigmaDeg, cautions);
  return { ...descent, angle, profile, nearbyMaxDeg: Math.max(descent.nearbyMaxDeg, angle.governingDeg) };
}

/** The steepest window that shares no ground with a stretch; null where every one does. */
function steepestElsewhere({ distanceM, angleDeg, windowM }: Profile, [from, to]: readonly [number, number]) {
  const last = distanceM[distanceM.length - 1];
  let best: { angleDeg: number; stretchM: readonly [number, number] } | null = null;
  for (let k = 0; k < distanceM.length; k++) {
    const start = Math.min(Math.max(0, distanceM[k] - windowM / 2), last - windowM);
    if (start + windowM > from && start < to) continue;
    if (!best || angleDeg[k] > best.angleDeg)
      best = { angleDeg: angleDeg[k], stretchM: [start, start + windowM] as const };
  }
  return best;
}

const capped = (profile: Profile, mostDeg: number): Profile => ({
  ...profile,
  angleDeg: profile.angleDeg.map((deg) => Math.min(deg, mostDeg)),
});
