import * as v from 'valibot';
import { count, day, deleted, id, idOrNone, line, lineOrNone, notes, numberOrNone } from './fields.ts';

/** A drill that was held, with what its watch and its scale said. */
export const drill = v.strictObject({
  id,
  siteId: idOrNone,
  stationId: idOrNone,
  on: day,
  crew: line,
  people: count(0, 200),
  /** The way or layout that was drilled, in words. */
  did: line,
  minutes: numberOrNone(0, 1000),
  resets: v.optional(v.nullable(count(0, 200)), null),
  rigMin: numberOrNone(0, 600),
  resetMin: numberOrNone(0, 60),
  /** Measured with a scale in the line. */
  litterFriction: numberOrNone(0, 2),
  by: lineOrNone,
  notes,
  deleted,
});

export type DrillRecord = v.InferOutput<typeof drill>;
