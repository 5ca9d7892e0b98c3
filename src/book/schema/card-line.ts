import * as v from 'valibot';
import { deleted, id, line, number } from './fields.ts';

/** A line of the check card. The card's text is the book's own. */
export const cardLine = v.strictObject({
  id,
  heading: line,
  /** Place on the card; equal ones go by id. */
  order: number(-1e6, 1e6),
  text: line,
  deleted,
});

export type CardLineRecord = v.InferOutput<typeof cardLine>;
