import type { Rates } from '../../book/index.ts';
import {
  type Anchor,
  type Conditions,
  holdKn,
  type PlanVector,
  tireFriction,
  treeIsNoGo,
  twoLegKn,
} from '../../rigging/index.ts';
import { toRadians } from '../../units/index.ts';

/** What a force does to an anchor: 0 met, 1 for a judge on site, 2 unmet; with the factor against sliding. */
export interface AnchorLoad {
  verdict: 0 | 1 | 2;
  holdFactor: number;
}

/** Verdict over several loads, for a search that makes no object a force: the same rules as `haulForces`. */
export const noLoad = (): AnchorLoad => ({ verdict: 0, holdFactor: Number.POSITIVE_INFINITY });

export function clearLoad(sum: AnchorLoad): void {
  sum.verdict = 0;
  sum.holdFactor = Number.POSITIVE_INFINITY;
}

/** Adds a force on an anchor to what is known: sliding, and strength at a required factor with so many attachments free. */
export function addLoad(
  sum: AnchorLoad,
  anchor: Anchor,
  free: number,
  kn: number,
  toward: PlanVector,
  required: number,
  conditions: Conditions,
  rates: Rates,
): void {
  if (anchor.kind !== 'apparatus') {
    const no = anchor.kind === 'tree' && treeIsNoGo(anchor, rates);
    sum.verdict = no ? 2 : (Math.max(sum.verdict, 1) as 1 | 2);
    return;
  }
  const friction = tireFriction(conditions, rates);
  const hold = friction === null ? 0 : holdKn(anchor.emptyMassKg, friction, rates.brakedShare, anchor.fall, toward);
  const factor = hold / kn;
  sum.holdFactor = Math.min(sum.holdFactor, factor);
  const shared = free >= 2 ? twoLegKn(kn, toRadians(rates.tiePairDeg)) : kn;
  const strong = free >= 1 && anchor.attachmentKn !== null && anchor.attachmentKn / shared >= required - TOLERANCE;
  if (!strong || factor < rates.holdFactor - TOLERANCE) sum.verdict = 2;
}

const TOLERANCE = 1e-9;

/** Makes a sum both loads together, for a search that asks it for every pair. */
export function sumOf(sum: AnchorLoad, a: AnchorLoad, b: AnchorLoad): void {
  sum.verdict = worseOf(a.verdict, b.verdict);
  sum.holdFactor = Math.min(a.holdFactor, b.holdFactor);
}

export const worseOf = (a: AnchorLoad['verdict'], b: AnchorLoad['verdict']): AnchorLoad['verdict'] =>
  Math.max(a, b) as AnchorLoad['verdict'];

/** Attachments for each of so many lines that share an anchor. */
export const freeOf = (anchor: Anchor, lines: number): number =>
  anchor.kind === 'apparatus' ? Math.floor(anchor.attachments / lines) : 1;
