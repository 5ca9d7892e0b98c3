/**
 * Why a number is what it is, as data that a screen or sheet can show. `formula` is plain arithmetic over the names in `inputs`
 * with sin, cos (degrees), exp, sqrt, min, max, ceil and floor (whole numbers to within 1e-9), so that anyone can work it out again.
 */
export interface Reason {
  readonly quantity: string;
  readonly value: number;
  readonly unit: string;
  readonly formula: string;
  readonly inputs: Readonly<Record<string, number>>;
  /** Key in docs/sources.md; 'derived' follows from statics or geometry, 'practice' is common practice without a source. */
  readonly source: string;
}

/** A reason, from its parts in the order in which a person reads them; common practice unless a source is named. */
export const reason = (
  quantity: string,
  value: number,
  unit: string,
  formula: string,
  inputs: Reason['inputs'],
  source = 'practice',
): Reason => ({ quantity, value, unit, formula, inputs, source });
