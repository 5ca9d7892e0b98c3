import { pairRopes } from './pair-ropes.ts';
import type { RopeNeed } from './rope-need.ts';

export type KitTier = 'first arriving' | 'first alarm' | 'mutual aid';

/** Ropes that one unit brings, metres each, and its minute of arrival. */
export interface KitArrival {
  readonly unit: string;
  readonly atMin: number;
  readonly tier: KitTier;
  readonly ropesM: readonly number[];
}

/** "joined": only with two ropes knotted together, which pass no device, capture or change of direction without a knot pass. */
export type Fit = 'yes' | 'joined' | 'no';
export type LineName = 'main' | 'belay' | 'haul';

/** A line that lacks rope: by how much with the best rope left for it, and the unit whose arrival makes everything fit. */
export interface Short {
  readonly line: LineName;
  readonly byM: number;
  readonly unit: string | null;
  readonly atMin: number | null;
}

export interface RopeFits {
  readonly firstArriving: { readonly fit: Fit; readonly short: readonly Short[] };
  readonly firstAlarm: { readonly fit: Fit; readonly short: readonly Short[] };
  readonly mutualAid: { readonly fit: Fit; readonly short: readonly Short[] };
  /** Arrival that brings the last rope needed for unjoined lines; null where none does. */
  readonly from: { readonly unit: string; readonly atMin: number } | null;
}

export interface FitSettings {
  /** Rope that a joining knot takes, metres. */
  readonly joinTakesM: number;
}

const tiers: readonly KitTier[] = ['first arriving', 'first alarm', 'mutual aid'];

/** Whether one rope for each line is there, told apart by who has arrived: each tier has the ropes of those before it. */
export function ropeFits(need: RopeNeed, kits: readonly KitArrival[], settings: FitSettings): RopeFits {
  const lines = linesOf(need);
  const needsM = lines.map((line) => line.needM);
  const from = arrivalThatFits(needsM, kits);
  const tier = (last: KitTier) => {
    const ropes = kits.filter((kit) => tiers.indexOf(kit.tier) <= tiers.indexOf(last)).flatMap((kit) => kit.ropesM);
    return fitOf(lines, ropes, from, settings);
  };
  return {
    firstArriving: tier('first arriving'),
    firstAlarm: tier('first alarm'),
    mutualAid: tier('mutual aid'),
    from,
  };
}

const linesOf = (need: RopeNeed): { line: LineName; needM: number }[] =>
  [
    { line: 'main' as const, needM: need.main },
    { line: 'belay' as const, needM: need.belay },
    { line: 'haul' as const, needM: need.haul ?? 0 },
  ]
    .filter(({ line }) => line !== 'haul' || need.haul !== null)
    .sort((a, b) => b.needM - a.needM);

const ROPE_TOLERANCE_M = 1e-9;

/** Long ropes to long needs: if any pairing of one rope a line works, this one does. */
function singlesFit(needsM: readonly number[], ropesM: readonly number[]): boolean {
  const ropes = [...ropesM].sort((a, b) => b - a);
  return needsM.every((needM, i) => i < ropes.length && ropes[i]! + ROPE_TOLERANCE_M >= needM);
}

function arrivalThatFits(needsM: readonly number[], kits: readonly KitArrival[]): RopeFits['from'] {
  const there: number[] = [];
  for (const kit of [...kits].sort((a, b) => a.atMin - b.atMin)) {
    there.push(...kit.ropesM);
    if (singlesFit(needsM, there)) return { unit: kit.unit, atMin: kit.atMin };
  }
  return null;
}

function fitOf(
  lines: readonly { line: LineName; needM: number }[],
  ropesM: readonly number[],
  from: RopeFits['from'],
  settings: FitSettings,
): { fit: Fit; short: Short[] } {
  const needsM = lines.map((line) => line.needM);
  if (singlesFit(needsM, ropesM)) return { fit: 'yes', short: [] };
  const ropes = [...ropesM].sort((a, b) => b - a);
  const served = ropes.length < lines.length ? haulLast(lines) : lines;
  const short = served
    .map(({ line, needM }, i) => ({
      line,
      byM: needM - (ropes[i] ?? 0),
      unit: from?.unit ?? null,
      atMin: from?.atMin ?? null,
    }))
    .filter(({ byM }) => byM > ROPE_TOLERANCE_M);
  return { fit: pairRopes(needsM, ropes, settings.joinTakesM) ? 'joined' : 'no', short };
}

/** With too few ropes the haul line goes without first: main and belay hold people. */
const haulLast = <T extends { readonly line: LineName }>(lines: readonly T[]): T[] => [
  ...lines.filter(({ line }) => line !== 'haul'),
  ...lines.filter(({ line }) => line === 'haul'),
];
