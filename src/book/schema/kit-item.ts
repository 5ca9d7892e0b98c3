import * as v from 'valibot';
import { kitItemKinds } from '../kit.ts';
import { count, deleted, id, lineOrNone, numberOrNone } from './fields.ts';

/** Hardware or slings of one sort in a kit, with the rated strength of one. */
export const kitItem = v.strictObject({
  id,
  kitId: id,
  kind: v.picklist(kitItemKinds),
  ratedKn: numberOrNone(0, 500),
  lengthM: numberOrNone(0, 100),
  count: count(0, 1000),
  label: lineOrNone,
  deleted,
});

export type KitItemRecord = v.InferOutput<typeof kitItem>;
