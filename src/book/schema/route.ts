import * as v from 'valibot';
import { deleted, id, line, lineOrNone, notes } from './fields.ts';

/** A road with mile markers, by the name that its ways carry. */
export const route = v.strictObject({
  id,
  name: line,
  /** Its number, if it has one. */
  ref: lineOrNone,
  /** Words for the way in which markers rise, such as "eastbound". */
  rising: lineOrNone,
  notes,
  deleted,
});

export type RouteRecord = v.InferOutput<typeof route>;
