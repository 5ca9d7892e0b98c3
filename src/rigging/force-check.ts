import { type Anchor, type ApparatusAnchor, type TreeSettings, treeIsNoGo } from './anchor.ts';
import type { Conditions } from './conditions.ts';
import { type HoldSettings, holdKn, tireFriction } from './hold.ts';
import { towardDeg } from './plan-vector.ts';
import type { PlanForce } from './turn-force.ts';
import { twoLegKn } from './two-leg.ts';

export type Verdict = 'yes' | 'no' | 'judge on site';

/** One force at one place against what is there to take it. */
export interface ForceCheck {
  readonly at: string;
  /** Sliding of an apparatus, or strength of what the rope is tied to: held, hauling or as a belay; a haul grab; a part. */
  readonly kind: 'hold' | 'strength' | 'turn' | 'belay' | 'grab' | 'part';
  readonly kn: number;
  readonly towardDeg: number | null;
  readonly capacityKn: number | null;
  readonly factor: number | null;
  readonly required: number | null;
  readonly ok: Verdict;
  /** Attachment points that share the force. */
  readonly points: 1 | 2;
  /** The rule or formula behind it. */
  readonly rule: string;
}

export interface AnchorSettings extends HoldSettings, TreeSettings {
  /** Needed of an apparatus against sliding. */
  readonly holdFactor: number;
  /** Angle between two ties that share a force, degrees. */
  readonly tiePairDeg: number;
}

const FACTOR_TOLERANCE = 1e-9;

/** Force against capacity at a required factor; an unknown capacity is not met. */
export function againstCapacity(
  where: Pick<ForceCheck, 'at' | 'kind' | 'rule'>,
  force: PlanForce,
  capacityKn: number | null,
  required: number,
  points: 1 | 2 = 1,
): ForceCheck {
  const factor = capacityKn === null ? null : force.kn > 0 ? capacityKn / force.kn : Number.POSITIVE_INFINITY;
  return {
    ...where,
    kn: force.kn,
    towardDeg: force.toward.x || force.toward.y ? towardDeg(force.toward) : null,
    capacityKn,
    factor,
    required,
    ok: factor !== null && factor >= required - FACTOR_TOLERANCE ? 'yes' : 'no',
    points,
  };
}

/** Sliding of an apparatus; a tree or rock does not slide and is for a judge on site. */
export function holdCheck(
  at: string,
  anchor: Anchor,
  force: PlanForce,
  conditions: Conditions,
  settings: AnchorSettings,
): ForceCheck {
  if (anchor.kind !== 'apparatus') return judged({ at, kind: 'hold' }, anchor, force, settings);
  const friction = tireFriction(conditions, settings);
  const capacityKn =
    friction === null ? 0 : holdKn(anchor.emptyMassKg, friction, settings.brakedShare, anchor.fall, force.toward);
  const rule =
    friction === null ? 'on ice an apparatus is not an anchor' : '√(F² − Wt²(1 − c²)) − c Wt against the force';
  return againstCapacity({ at, kind: 'hold', rule }, force, capacityKn, settings.holdFactor);
}

/**
 * Strength of an attachment. Where one point falls short and the apparatus has a second one free, two at up to `tiePairDeg`
 * share the force before the check is called unmet.
 */
export function strengthCheck(
  where: { readonly at: string; readonly kind: 'strength' | 'turn' | 'belay' },
  anchor: Anchor,
  force: PlanForce,
  required: number,
  settings: AnchorSettings,
): ForceCheck {
  if (anchor.kind !== 'apparatus') return judged(where, anchor, force, settings);
  const one = againstCapacity({ ...where, rule: 'attachment ÷ force' }, force, onePoint(anchor), required);
  if (one.ok === 'yes' || anchor.attachments < 2 || anchor.attachmentKn === null) return one;
  const share = twoLegKn(1, (settings.tiePairDeg * Math.PI) / 180);
  const rule = `two attachments at up to ${settings.tiePairDeg}°, each ${share.toFixed(3)} of the force`;
  return againstCapacity({ ...where, rule }, force, anchor.attachmentKn / share, required, 2);
}

const onePoint = (anchor: ApparatusAnchor): number | null => (anchor.attachments >= 1 ? anchor.attachmentKn : 0);

function judged(
  where: Pick<ForceCheck, 'at' | 'kind'>,
  anchor: Exclude<Anchor, ApparatusAnchor>,
  force: PlanForce,
  settings: AnchorSettings,
): ForceCheck {
  const no = anchor.kind === 'tree' && treeIsNoGo(anchor, settings);
  const rule =
    anchor.kind === 'tree'
      ? `alive, rooted, trunk ${settings.treeLeastM} m or more (${settings.treePreferredM} m preferred), tied low; capacity is not computed`
      : 'sound and seated rock; capacity is not computed';
  return {
    ...where,
    kn: force.kn,
    towardDeg: force.toward.x || force.toward.y ? towardDeg(force.toward) : null,
    capacityKn: null,
    factor: null,
    required: null,
    ok: no ? 'no' : 'judge on site',
    points: 1,
    rule,
  };
}
