import * as v from 'valibot';
import { day, deleted, id, line, lineOrNone, notes } from './fields.ts';

export const checkMethods = ['walked', 'drove', 'desk'] as const;

/** Somebody stands for a site as the book has it on a day. Each is a record of its own: a later one never rewrites it. */
export const signOff = v.strictObject({
  id,
  siteId: id,
  by: line,
  role: lineOrNone,
  on: day,
  method: v.picklist(checkMethods),
  /** Weather, light, snow, growth: what could hide something. */
  conditions: lineOrNone,
  notes,
  deleted,
});

export type SignOffRecord = v.InferOutput<typeof signOff>;
