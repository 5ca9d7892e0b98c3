import type { ForceCheck } from '../rigging/index.ts';
import { degrees, kilonewtons, share } from './rounded.ts';
import type { StudyForce } from './study.ts';

/** The contract's form of a force check; a factor over no force at all is told as null. */
export function forcePart(check: ForceCheck): StudyForce {
  const { at, kind, kn, towardDeg, capacityKn, factor, required, ok, points, rule } = check;
  return {
    at,
    kind,
    kn: kilonewtons(kn),
    towardDeg: towardDeg === null ? null : degrees(towardDeg),
    capacityKn: capacityKn === null ? null : kilonewtons(capacityKn),
    factor: factor === null || !Number.isFinite(factor) ? null : share(factor),
    required,
    ok,
    points,
    rule,
  };
}
