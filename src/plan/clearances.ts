import { defaultRates } from '../book/index.ts';
import type { StudyLayout } from '../study/index.ts';

/** Ends of a haul field in which the system cannot work, metres. */
export interface Clearances {
  readonly nearM: number;
  readonly anchorM: number;
}

/** The clearances that a layout's throw was worked out with; the shipped ones where its rope, not its field, limits the throw. */
export function clearancesOf({ reasons }: StudyLayout): Clearances {
  const used = (name: 'clearanceNearM' | 'clearanceAnchorM'): number =>
    reasons.find(({ inputs }) => name in inputs)?.inputs[name] ?? defaultRates[name];
  return { nearM: used('clearanceNearM'), anchorM: used('clearanceAnchorM') };
}
