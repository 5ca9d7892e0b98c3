/** Which number of a date written with slashes is the month. */
export type DayOrder = 'month first' | 'day first';

/**
 * The order that a file's dates need: day first where some first number is over 12 and no second one is, else month first as in
 * the United States. `remark` says what was taken where the file has such dates.
 */
export function readDayOrder(texts: readonly string[]): { order: DayOrder; remark: string | null } {
  let day = false;
  let month = false;
  let any = false;
  for (const text of texts) {
    const found = /^(\d{1,2})[/.-](\d{1,2})[/.-]\d{4}/.exec(text);
    if (!found) continue;
    any = true;
    if (Number(found[1]) > 12) day = true;
    if (Number(found[2]) > 12) month = true;
  }
  const order = day && !month ? 'day first' : 'month first';
  return { order, remark: any ? `Dates like 3/4/2020 were read ${order}.` : null };
}

const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];

/** A day as YYYY-MM-DD, the time of day dropped; null where the text is none or the calendar has no such day. */
export function readDay(text: string, order: DayOrder): string | null {
  const iso = /^(\d{4})[-/.]?(\d{2})[-/.]?(\d{2})(?:\D.*)?$/.exec(text);
  if (iso) return dayOf(Number(iso[1]), Number(iso[2]), Number(iso[3]));
  const slashed = /^(\d{1,2})[/.-](\d{1,2})[/.-](\d{4})(?:\D.*)?$/.exec(text);
  if (slashed) {
    const [first, second] = [Number(slashed[1]), Number(slashed[2])];
    return order === 'month first'
      ? dayOf(Number(slashed[3]), first, second)
      : dayOf(Number(slashed[3]), second, first);
  }
  const named = /^(\d{1,2})[ -]([a-z]{3})[a-z]*[ -](\d{4})|^([a-z]{3})[a-z]*\.? (\d{1,2}),? (\d{4})/i.exec(text);
  if (!named) return null;
  const month = MONTHS.indexOf((named[2] ?? named[4])!.toLowerCase()) + 1;
  return dayOf(Number(named[3] ?? named[6]), month, Number(named[1] ?? named[5]));
}

function dayOf(year: number, month: number, day: number): string | null {
  const date = new Date(Date.UTC(year, month - 1, day));
  const isDay =
    year >= 1900 && date.getUTCFullYear() === year && date.getUTCMonth() === month - 1 && date.getUTCDate() === day;
  return isDay ? date.toISOString().slice(0, 10) : null;
}
