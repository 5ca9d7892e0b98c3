import type { PlanVector } from './plan-vector.ts';

/** What a rope may be tied to. Guardrails, barriers, signs, poles and fences are no anchors and have no place here. */
export type Anchor = ApparatusAnchor | TreeAnchor | RockAnchor;

export interface ApparatusAnchor {
  readonly kind: 'apparatus';
  readonly id: string;
  readonly emptyMassKg: number;
  /** Rated strength of one attachment point, kilonewtons; null where nobody stated it. */
  readonly attachmentKn: number | null;
  /** Attachment points free for this line. */
  readonly attachments: number;
  /** Fall of its standing ground, metres per metre, pointing down. */
  readonly fall: PlanVector;
}

export interface TreeAnchor {
  readonly kind: 'tree';
  readonly id: string;
  readonly trunkDiameterM: number | null;
}

export interface RockAnchor {
  readonly kind: 'rock';
  readonly id: string;
}

export interface TreeSettings {
  /** Thinnest trunk that is offered at all, alive and rooted, metres (common practice, no source). */
  readonly treeLeastM: number;
  /** Trunk that one would look for, metres (common practice, no source). */
  readonly treePreferredM: number;
}

/** A tree is never computed: too thin or never measured is a no, anything else is for a judge on site. */
export const treeIsNoGo = (tree: TreeAnchor, settings: TreeSettings): boolean =>
  !(tree.trunkDiameterM !== null && tree.trunkDiameterM >= settings.treeLeastM);
