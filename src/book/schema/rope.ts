import * as v from 'valibot';
import { count, dayOrNone, deleted, id, lineOrNone, number, numberOrNone } from './fields.ts';

/** Ropes of one sort in a kit. Strength is the maker's rated minimum, null where nobody read the label. */
export const rope = v.strictObject({
  id,
  kitId: id,
  lengthM: number(1, 500),
  diameterMm: numberOrNone(4, 30),
  ratedKn: numberOrNone(0, 200),
  count: count(0, 100),
  label: lineOrNone,
  inServiceSince: dayOrNone,
  deleted,
});

export type RopeRecord = v.InferOutput<typeof rope>;
