import * as v from 'valibot';
import { apparatusKinds } from '../fleet.ts';
import { count, deleted, id, ids, line, number, numberOrNone } from './fields.ts';

/** An apparatus of the fleet; see `Apparatus` for what each figure means. */
export const apparatus = v.strictObject({
  id,
  name: line,
  kind: v.picklist(apparatusKinds),
  lengthM: number(1, 30),
  widthM: number(0.5, 5),
  wheelbaseM: number(0.5, 20),
  turningRadiusM: number(1, 40),
  emptyMassKg: number(100, 80_000),
  grossMassKg: number(100, 80_000),
  attachments: v.optional(
    v.pipe(
      v.array(v.strictObject({ end: v.picklist(['front', 'rear']), ratedKn: numberOrNone(0, 500) })),
      v.check((list) => list.length <= 20, 'expected at most 20 attachment points'),
    ),
    () => [],
  ),
  crew: count(0, 20),
  kitIds: ids,
  deleted,
});

export type ApparatusRecord = v.InferOutput<typeof apparatus>;
