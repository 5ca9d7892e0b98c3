import * as v from 'valibot';
import { markKinds } from '../marks.ts';
import { deleted, flagOrNone, id, idOrNone, lineOrNone, notes, numberOrNone } from './fields.ts';
import { markGeometry } from './geometry.ts';

/** Kinds of a mark's record: the patient point is the site's own, so that there is one of it. */
export const recordedMarkKinds = markKinds.filter((kind) => kind !== 'patient point');

/** Something a surveyor put on the map; without a `siteId` it belongs to the district. */
export const mark = v.strictObject({
  id,
  siteId: idOrNone,
  kind: v.picklist(recordedMarkKinds),
  name: lineOrNone,
  geometry: markGeometry,
  trunkDiameterM: numberOrNone(0, 20),
  heightM: numberOrNone(0, 500),
  /** A tree alive and rooted, a rock that does not move: what somebody saw, null where nobody looked. */
  soundAtLook: flagOrNone,
  notes,
  deleted,
});

export type MarkRecord = v.InferOutput<typeof mark>;
