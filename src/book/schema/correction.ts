import * as v from 'valibot';
import { day, deleted, id, ids, line, number } from './fields.ts';
import { quantityNames } from './measurement.ts';

/** Somebody's word, with a reason, that readings which better a result are to be taken: the rule asks for two of them. */
export const correction = v.strictObject({
  id,
  siteId: id,
  quantity: v.picklist(quantityNames),
  measurementIds: ids,
  /** The computed value that was on the screen; where the computation has since changed, the correction is asked for again. */
  computed: v.optional(v.nullable(number(-2000, 2000)), null),
  by: line,
  on: day,
  reason: line,
  deleted,
});

export type CorrectionRecord = v.InferOutput<typeof correction>;
