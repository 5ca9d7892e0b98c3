import type { ComputedValue } from '../../book/index.ts';

/** What was computed of a quantity before anybody measured it, and its sigma where one is known. */
export interface Computed extends ComputedValue {
  readonly sigma: number | null;
  /** 5 to 95 %, where it is told. */
  readonly range: readonly [number, number] | null;
}

/** Standard normal value below which 95 % lie (derived). */
export const Z95 = 1.645;
