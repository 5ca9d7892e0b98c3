import type { AngleClass } from '../../book/index.ts';
import { classShares, type DescentAngle, namedClass, normalAbove, planAs, weightShares } from '../../descent/index.ts';
import { Z95 } from './computed.ts';

const rankOf: Readonly<Record<AngleClass, number>> = { low: 0, steep: 1, high: 2 };

/** The steeper of two plans. */
export const steeperPlan = (a: AngleClass, b: AngleClass): AngleClass => (rankOf[a] > rankOf[b] ? a : b);

/** What of a descent makes its plan steeper whatever its angle. */
export interface AngleCautions {
  readonly step: boolean;
  readonly screeningOnly: boolean;
}

/**
 * The angle of a descent with a steeper one measured, degrees: the chance of each class is the larger of both, the plan the steeper of
 * both, so that nothing becomes gentler whatever the reading's sigma.
 */
export function steeperAngle(
  angle: DescentAngle,
  valueDeg: number,
  sigmaDeg: number,
  cautions: AngleCautions,
): DescentAngle {
  const { rule, probability } = angle;
  const computed = computedChance(angle);
  const chance = (limitDeg: number): number => Math.max(chanceFrom(valueDeg, sigmaDeg, limitDeg), computed(limitDeg));
  const shares = classShares(chance, rule);
  const named = namedClass(shares, cautions.screeningOnly);
  const plan = planAs(chance, rule, named, cautions);
  const governingDeg = Math.max(angle.governingDeg, valueDeg);
  return {
    ...angle,
    governingDeg,
    governingSigmaDeg: sigmaDeg,
    rangeDeg: [clamp(valueDeg - Z95 * sigmaDeg), Math.max(angle.rangeDeg[1], clamp(valueDeg + Z95 * sigmaDeg))],
    class: angle.class === 'high' ? 'high' : named,
    planAs: steeperPlan(plan, angle.planAs),
    probability: shares.high >= probability.high ? shares : probability,
    weight: weightShares(governingDeg),
  };
}

/**
 * The angle of a descent with a gentler one measured on its governing stretch and taken over, degrees. Ground elsewhere on the
 * descent stays as computed: where it is the steeper then, it governs (`elsewhere`: its angle and stretch). Never steeper than computed.
 */
export function gentlerAngle(
  angle: DescentAngle,
  valueDeg: number,
  sigmaDeg: number,
  elsewhere: { readonly angleDeg: number; readonly stretchM: readonly [number, number] } | null,
  cautions: AngleCautions,
): DescentAngle {
  const { rule } = angle;
  const otherDeg = Math.min(elsewhere?.angleDeg ?? 0, angle.governingDeg);
  const computed = computedChance(angle);
  const chance = (limitDeg: number): number =>
    Math.min(
      computed(limitDeg),
      Math.max(
        chanceFrom(valueDeg, sigmaDeg, limitDeg),
        elsewhere ? chanceFrom(otherDeg, angle.governingSigmaDeg, limitDeg) : 0,
      ),
    );
  const probability = classShares(chance, rule);
  const named = namedClass(probability, cautions.screeningOnly);
  const plan = planAs(chance, rule, named, cautions);
  const other = elsewhere !== null && otherDeg > valueDeg;
  const governingDeg = Math.max(valueDeg, otherDeg);
  const governingSigmaDeg = other ? angle.governingSigmaDeg : sigmaDeg;
  return {
    ...angle,
    governingDeg,
    governingSigmaDeg,
    rangeDeg: [
      clamp(governingDeg - Z95 * governingSigmaDeg),
      Math.min(angle.rangeDeg[1], clamp(governingDeg + Z95 * governingSigmaDeg)),
    ],
    stretchM: other ? elsewhere.stretchM : angle.stretchM,
    class: named,
    planAs: rankOf[plan] < rankOf[angle.planAs] ? plan : angle.planAs,
    probability,
    weight: weightShares(governingDeg),
  };
}

/** Chance that an angle read as `valueDeg` is at or over a limit. */
function chanceFrom(valueDeg: number, sigmaDeg: number, limitDeg: number): number {
  if (sigmaDeg <= 0) return valueDeg >= limitDeg ? 1 : 0;
  return normalAbove((limitDeg - valueDeg) / sigmaDeg);
}

const computedChance =
  ({ probability, rule }: DescentAngle) =>
  (limitDeg: number): number =>
    limitDeg === rule.highMinDeg ? probability.high : probability.high + probability.steep;

const clamp = (deg: number): number => Math.min(90, Math.max(0, deg));
