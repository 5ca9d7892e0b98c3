import * as v from 'valibot';
import { deleted, flag, id, ids, line, lineOrNone, number, position } from './fields.ts';

/** Where apparatus and kit are kept. */
export const station = v.strictObject({
  id,
  name: line,
  at: position,
  apparatusIds: ids,
  kitIds: ids,
  /** From the call to wheels rolling; common practice, no source, where nobody typed one. */
  turnoutMin: v.optional(number(0, 60), 2),
  mutualAid: flag,
  phone: lineOrNone,
  radio: lineOrNone,
  deleted,
});

export type StationRecord = v.InferOutput<typeof station>;
