import * as v from 'valibot';
import { rateNames, rateRow } from '../rates.ts';
import { deleted, id, line, lineOrNone, number } from './fields.ts';

const names: readonly string[] = rateNames;

/** A rate of the district's own in the place of the shipped one; its id is the rate's name. */
export const rate = v.strictObject({
  id: v.pipe(
    id,
    v.check((name) => names.includes(name), 'expected the name of a rate'),
  ),
  value: number(-1e6, 1e6),
  reason: v.optional(line, ''),
  by: lineOrNone,
  deleted,
});

export type RateRecord = v.InferOutput<typeof rate>;

/** True where the value lies within the shipped bounds of the rate. */
export function rateInBounds({ id: name, value }: Pick<RateRecord, 'id' | 'value'>): boolean {
  const found = rateNames.find((known) => known === name);
  if (!found) return false;
  const { least, most } = rateRow(found);
  return value >= least && value <= most;
}
