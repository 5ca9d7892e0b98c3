import * as v from 'valibot';
import { deleted, id, line, notes } from './fields.ts';

/** A rope kit by name; its ropes and items are records of their own, so that two people can each add one. */
export const kit = v.strictObject({ id, name: line, notes, deleted });

export type KitRecord = v.InferOutput<typeof kit>;
