import * as v from 'valibot';
import { dayOrNone, deleted, id, lineOrNone, number, position } from './fields.ts';

/** Where one mile marker of a route stands. Mileage and place are one value: a marker moved is a marker read again. */
export const mileMarker = v.strictObject({
  id,
  routeId: id,
  post: v.strictObject({ mile: number(-10, 10_000), at: position }),
  by: lineOrNone,
  on: dayOrNone,
  deleted,
});

export type MileMarkerRecord = v.InferOutput<typeof mileMarker>;
