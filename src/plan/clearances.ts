import type { StudyLayout } from '../study/index.ts';

/** Ends of a haul field in which the system cannot work, metres. */
export interface Clearances {
  readonly nearM: number;
  readonly anchorM: number;
}

/** The clearances that a layout's throw was worked out with, by the district's own rates where it has them. */
export function clearancesOf({ reasons }: StudyLayout): Clearances {
  const used = (name: 'clearanceNearM' | 'clearanceAnchorM'): number =>
    reasons.find(({ inputs }) => name in inputs)?.inputs[name] ?? 0;
  return { nearM: used('clearanceNearM'), anchorM: used('clearanceAnchorM') };
}
