import * as v from 'valibot';
import { dayOrNone, deleted, id, line, lineOrNone, notes, numberOrNone } from './fields.ts';

/** What the book knows of a file or an address of elevation, roads or crashes: it fills in what the file does not say. */
export const source = v.strictObject({
  id,
  name: line,
  kind: v.picklist(['elevation', 'roads', 'crashes', 'other']),
  address: v.optional(v.nullable(line), null),
  crs: lineOrNone,
  verticalUnit: v.optional(v.nullable(v.picklist(['m', 'ft', 'us-ft'])), null),
  terrainKind: v.optional(v.picklist(['bare earth', 'surface', 'unknown']), 'unknown'),
  verticalRmseM: numberOrNone(0, 50),
  collectedOn: dayOrNone,
  attribution: lineOrNone,
  notes,
  deleted,
});

export type SourceRecord = v.InferOutput<typeof source>;
