import * as v from 'valibot';
import { count, dayOrNone, deleted, id, idOrNone, line, lineOrNone, notes, numberOrNone, position } from './fields.ts';

/** Landing zone, staging or parking near a site, as somebody surveyed it. */
export const supportPlace = v.strictObject({
  id,
  siteId: idOrNone,
  kind: v.picklist(['landing zone', 'staging', 'parking']),
  name: line,
  at: position,
  vehicles: v.optional(v.nullable(count(0, 500)), null),
  /** Free ground, the longer side and the shorter one: what somebody paced or taped, null where nobody did. */
  lengthM: numberOrNone(0, 2000),
  widthM: numberOrNone(0, 2000),
  /** Wires, poles, loose ground, slope, livestock: what whoever comes must know. */
  hazards: notes,
  by: lineOrNone,
  on: dayOrNone,
  notes,
  deleted,
});

export type SupportPlaceRecord = v.InferOutput<typeof supportPlace>;
