import * as v from 'valibot';

/** An id: letters, digits, dot, dash, underscore; at most 64, the first a letter or a digit. */
export const idPattern = /^[A-Za-z0-9][A-Za-z0-9._-]{0,63}$/;

export const id = v.pipe(
  v.string(),
  v.check(
    (text) => idPattern.test(text),
    'expected an id of letters, digits, dots, dashes and underscores, at most 64',
  ),
);

/** An id of another record, or nothing. */
export const idOrNone = v.optional(v.nullable(id), null);

/** Half of a surrogate pair: it has no form in UTF-8, so a file could not give it back. */
const broken = /\p{Surrogate}/u;

const textOf = (most: number) =>
  v.pipe(
    v.string(),
    v.check((text) => text.length <= most, `expected at most ${most} characters`),
    v.check((text) => !broken.test(text), 'expected whole characters'),
  );

/** A name or a short line. */
export const line = textOf(200);
/** A line that may be missing. */
export const lineOrNone = v.optional(v.nullable(line), null);
/** Free notes, empty where nobody wrote any. */
export const notes = v.optional(textOf(20_000), '');

/** A finite number within bounds; negative zero becomes zero, which is all that JSON keeps of it. */
export const number = (least: number, most: number) =>
  v.pipe(
    v.number(),
    v.finite('expected a finite number'),
    v.check((value) => value >= least && value <= most, `expected ${least} to ${most}`),
    v.transform((value) => (value === 0 ? 0 : value)),
  );
export const numberOrNone = (least: number, most: number) => v.optional(v.nullable(number(least, most)), null);
export const count = (least: number, most: number) =>
  v.pipe(
    number(least, most),
    v.check((value) => Number.isInteger(value), 'expected a whole number'),
  );

export const flag = v.optional(v.boolean(), false);
/** Yes, no, or nobody looked. */
export const flagOrNone = v.optional(v.nullable(v.boolean()), null);

/** A day, YYYY-MM-DD, that the calendar has. */
export const day = v.pipe(
  v.string(),
  v.check((text) => isDay(text), 'expected a day as YYYY-MM-DD'),
);
export const dayOrNone = v.optional(v.nullable(day), null);

/** A true azimuth in degrees. */
export const azimuth = v.pipe(
  number(0, 360),
  v.check((value) => value < 360, 'expected 0 to under 360'),
);

/** WGS 84 degrees. One value, so that a longitude never meets somebody else's latitude. */
export const position = v.strictObject({ lon: number(-180, 180), lat: number(-90, 90) });
export const positionOrNone = v.optional(v.nullable(position), null);

/** A SHA-256, lower-case hexadecimal. */
export const sha256 = v.pipe(
  v.string(),
  v.check((text) => /^[0-9a-f]{64}$/.test(text), 'expected a SHA-256 of 64 hexadecimal digits'),
);

/** Ids, in order, none twice. */
export const ids = v.optional(
  v.pipe(
    v.array(id),
    v.check((list) => list.length <= 200 && new Set(list).size === list.length, 'expected at most 200 ids, none twice'),
  ),
  () => [],
);

/** Ends every record: a deleted one stays in the book and can be taken back. */
export const deleted = v.optional(v.boolean(), false);

function isDay(text: string): boolean {
  const found = /^(\d{4})-(\d\d)-(\d\d)$/.exec(text);
  if (!found) return false;
  const [year, month, date] = [Number(found[1]), Number(found[2]), Number(found[3])];
  const leap = year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
  const days = [31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month - 1];
  return days !== undefined && date >= 1 && date <= days;
}
