import * as v from 'valibot';
import { count, dayOrNone, deleted, id, idOrNone, line, lineOrNone, notes, position } from './fields.ts';

/** Landing zone, staging or parking near a site, as somebody surveyed it. */
export const supportPlace = v.strictObject({
  id,
  siteId: idOrNone,
  kind: v.picklist(['landing zone', 'staging', 'parking']),
  name: line,
  at: position,
  vehicles: v.optional(v.nullable(count(0, 500)), null),
  by: lineOrNone,
  on: dayOrNone,
  notes,
  deleted,
});

export type SupportPlaceRecord = v.InferOutput<typeof supportPlace>;
