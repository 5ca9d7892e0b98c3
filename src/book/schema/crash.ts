import * as v from 'valibot';
import { day, deleted, id, idOrNone, position } from './fields.ts';

export const crashSeverities = ['killed', 'serious', 'minor', 'possible', 'property damage', 'unknown'] as const;

/** A crash: day, place and severity, and nothing else of what a record may hold. It leaves the book only when asked for. */
export const crash = v.strictObject({
  id,
  on: day,
  at: position,
  severity: v.picklist(crashSeverities),
  sourceId: idOrNone,
  deleted,
});

export type CrashRecord = v.InferOutput<typeof crash>;
