import * as v from 'valibot';
import { count, flag, id, idOrNone, line, notes, number } from './fields.ts';

/** The id of the one settings record. */
export const SETTINGS_ID = 'book';

/** Longer than this an address is a burden on the code of a plan sheet. */
const LONGEST_ADDRESS = 120;

/** A folder on the web: no name or password in it, nothing behind `?` or `#`, nothing but visible ASCII. */
const webFolder = v.pipe(
  v.string(),
  v.check(
    (text) =>
      text.length <= LONGEST_ADDRESS &&
      /^https?:\/\/[a-z0-9[\]][^\s/?#@"<>]*(?:\/[^\s?#"<>]*)?$/i.test(text) &&
      /^[!-~]*$/.test(text),
    `expected a web address such as https://fire.example/book/, at most ${LONGEST_ADDRESS} characters`,
  ),
);

/** What the whole book goes by. One record, `SETTINGS_ID`. */
export const settings = v.strictObject({
  id: v.pipe(
    id,
    v.check((text) => text === SETTINGS_ID, `expected the id "${SETTINGS_ID}"`),
  ),
  district: v.optional(line, ''),
  /** A made-up district, for trying out: what is published of it says so. */
  invented: flag,
  units: v.optional(v.picklist(['us', 'metric']), 'us'),
  /** One of the book's own angle rules, else a shipped one by its name, such as "30/45". */
  angleRuleId: idOrNone,
  angleRuleName: v.optional(line, '30/45'),
  /** Months from a field check to the next; common practice, no source. */
  reviewMonths: v.optional(count(1, 120), 12),
  /** The belay is planned for the full weight everywhere. */
  fullBelay: flag,
  /** Box of the district, degrees: a position outside it is questioned. */
  bounds: v.optional(
    v.nullable(
      v.pipe(
        v.strictObject({
          west: number(-180, 180),
          south: number(-90, 90),
          east: number(-180, 180),
          north: number(-90, 90),
        }),
        v.check(({ south, north }) => south <= north, 'expected a south edge under the north edge'),
      ),
    ),
    null,
  ),
  procedures: notes,
  /** Where the book is published for reading: links and the codes of plan sheets lead there. Null where it is not. */
  publishedAddress: v.optional(v.nullable(webFolder), null),
  deleted: flag,
});

export type SettingsRecord = v.InferOutput<typeof settings>;
