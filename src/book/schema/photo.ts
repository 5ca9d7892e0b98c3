import * as v from 'valibot';
import { count, dayOrNone, deleted, flagOrNone, id, idOrNone, line, positionOrNone, sha256 } from './fields.ts';

/** A photo of a site or of a mark; its bytes lie under their hash. */
export const photo = v.strictObject({
  id,
  siteId: id,
  markId: idOrNone,
  hash: sha256,
  type: v.picklist(['image/jpeg', 'image/png', 'image/webp']),
  widthPx: count(1, 20_000),
  heightPx: count(1, 20_000),
  sizeBytes: count(1, 50_000_000),
  takenOn: dayOrNone,
  /** Where it was taken, if the surveyor chose to keep that. */
  at: positionOrNone,
  caption: v.optional(line, ''),
  /** A patient can be seen or told: such a photo leaves the book only when asked for. Somebody has to say it. */
  showsPatient: v.boolean(),
  /** A number plate can be read; null where nobody looked. Only a photo said to be free of plates is published unasked. */
  showsPlate: flagOrNone,
  deleted,
});

export type PhotoRecord = v.InferOutput<typeof photo>;
