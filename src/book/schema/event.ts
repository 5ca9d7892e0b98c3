import * as v from 'valibot';
import { day, deleted, id, line, lineOrNone, notes } from './fields.ts';
import { area } from './geometry.ts';

export const eventKinds = ['slide', 'fire', 'flood', 'paving', 'new barrier', 'other'] as const;

/** Something that changed the ground or the road of an area from a day on. */
export const event = v.strictObject({
  id,
  name: line,
  kind: v.picklist(eventKinds),
  area,
  /** The day from which surveys and heights are older than the change. */
  on: day,
  by: lineOrNone,
  notes,
  deleted,
});

export type EventRecord = v.InferOutput<typeof event>;
