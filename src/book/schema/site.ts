import * as v from 'valibot';
import { azimuth, count, deleted, id, idOrNone, line, lineOrNone, notes, number, positionOrNone } from './fields.ts';

export const siteTypes = ['bend', 'straight', 'switchback', 'turnout', 'bridge end', 'intersection', 'other'] as const;

/**
 * A roadside place where a rescue would start. `place` is a point on a road edge in WGS 84 degrees with the true azimuth of its
 * side; the three move together, so they are one value. Left and right of a road's drawing are derived from it, never kept.
 */
export const site = v.strictObject({
  id,
  name: line,
  place: v.strictObject({ lon: number(-180, 180), lat: number(-90, 90), sideAzimuthDeg: azimuth }),
  roadName: lineOrNone,
  roadId: v.optional(v.nullable(line), null),
  type: v.optional(v.picklist(siteTypes), 'other'),
  notes,
  /** Where the patient is taken to be; without one the descent's end counts. */
  patientPoint: positionOrNone,
  /** People to bring up; the study plans one cycle for each. */
  patients: v.optional(count(1, 60), 1),
  radio: lineOrNone,
  /** Spots or marks that somebody fixed as anchor, change of direction and belay anchor. */
  pinnedAnchor: v.optional(v.nullable(line), null),
  pinnedTurn: v.optional(v.nullable(line), null),
  pinnedBelay: v.optional(v.nullable(line), null),
  routeId: idOrNone,
  deleted,
});

export type SiteRecord = v.InferOutput<typeof site>;
