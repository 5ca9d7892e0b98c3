import { METRES_PER_DEGREE } from './bounds.ts';
import { type Ordinate, readOrdinate } from './ordinate.ts';
import type { Candidate, Fault } from './reading.ts';
import type { Axis, Token } from './tokens.ts';

/** Decimals from which two bare numbers side by side are taken for a position inside a longer text: 3 are 111 m. */
const TELLING_DECIMALS = 3;

/** Words that may stand beside a bare pair of numbers without making it part of a sentence. */
const beside = new Set([
  'AT',
  'COORDS',
  'COORDINATES',
  'COORD',
  'POSITION',
  'POS',
  'GPS',
  'LOCATION',
  'LOC',
  'POINT',
  'LL',
  'T',
]);

/** A pair and the tokens it takes, so that readings that overlap can be told from readings of two places. */
export interface PairFound {
  readonly found: Candidate | Fault;
  readonly start: number;
  readonly end: number;
}

/**
 * Every pair of numbers in a tokenised text that has the form of a position, from left to right, overlapping ones too.
 * Without letters or headings the latitude comes first. `commas` says that decimal commas were read: then a bare whole
 * number is no ordinate, since its comma may have been the one between the two.
 */
export function pairsIn(tokens: readonly Token[], commas: boolean): PairFound[] {
  const found: PairFound[] = [];
  for (let start = 0; start < tokens.length; start++) {
    const pair = pairAt(tokens, start, commas);
    if (pair) found.push(pair);
  }
  return found;
}

function pairAt(tokens: readonly Token[], start: number, commas: boolean): PairFound | null {
  const kind = tokens[start]!.kind;
  const last = tokens[start - 1];
  if (kind === 'number' && last?.kind === 'sign' && tokens[start]!.tight) return null;
  if (kind !== 'label' && kind !== 'letter' && kind !== 'sign' && kind !== 'number') return null;
  const heading = headingAt(tokens, start);
  const first = heading?.end ?? start;
  const limit = bareLimit(tokens, first);
  const one = readOrdinate(tokens, first, limit, heading?.axes[0] ?? null);
  if (!one) return null;
  const next = skipGaps(tokens, one.end);
  const two = readOrdinate(tokens, next, one.marked || one.packed ? 3 : one.parts, heading?.axes[1] ?? null);
  if (!two || two.end <= next || beginsWithDash(tokens, next, one, two)) {
    return two && beginsWithDash(tokens, next, one, two)
      ? { found: { fault: 'has a dash that may be a minus or stand between two numbers' }, start, end: two.end }
      : null;
  }
  const whole = isRest(tokens, 0, start) && isRest(tokens, two.end, tokens.length);
  const bare = commas && [one, two].some(({ axis, decimals }) => axis === null && decimals === 0);
  if (bare) return null;
  const found = judge(one, two, whole);
  return found && { found, start, end: two.end };
}

function judge(one: Ordinate, two: Ordinate, whole: boolean): Candidate | Fault | null {
  const fault = one.fault ?? two.fault ?? pairFault(one, two);
  if (fault !== null) return { fault };
  let [lat, lon] = one.axis === 'lon' || two.axis === 'lat' ? [two, one] : [one, two];
  const bare = one.axis === null && two.axis === null;
  const swapped = bare && Math.abs(lat.degrees) > 90 && Math.abs(lon.degrees) <= 90;
  if (swapped) [lat, lon] = [lon, lat];
  if (Math.abs(lat.degrees) > 90 || Math.abs(lon.degrees) > 180)
    return isTelling(one, two) ? { fault: 'is not on the Earth' } : null;
  const parts = Math.max(one.parts, two.parts);
  return {
    position: { lon: lon.degrees, lat: lat.degrees },
    withinM: 0.5 * Math.max(lat.stepDeg, lon.stepDeg) * METRES_PER_DEGREE,
    form: parts === 1 ? 'decimal degrees' : parts === 2 ? 'degrees and minutes' : 'degrees, minutes and seconds',
    strong: isTelling(one, two),
    whole,
    doubt: swapped ? 'swapped' : one.twiceNegative || two.twiceNegative ? 'sign' : null,
  };
}

function pairFault(one: Ordinate, two: Ordinate): string | null {
  if (one.axis !== null && one.axis === two.axis) return `has two ${one.axis === 'lat' ? 'latitudes' : 'longitudes'}`;
  const half = (a: Ordinate, b: Ordinate): boolean => a.lettered && !b.lettered && !b.signed;
  return half(one, two) || half(two, one) ? 'has N, S, E or W with one number and nothing with the other' : null;
}

/** True where the writing alone shows a position: both numbers alike, with letters, headings, marks or enough decimals. */
function isTelling(one: Ordinate, two: Ordinate): boolean {
  const alike = one.parts === two.parts || (one.marked && two.marked);
  const named = one.axis !== null && two.axis !== null;
  const fine = one.parts > 1 || (one.decimals >= 1 && two.decimals >= 1);
  if (named) return alike && (fine || (one.marked && two.marked));
  if (one.axis !== null || two.axis !== null) return false;
  if (one.parts > 1) return one.marked && two.marked;
  return alike && one.decimals >= TELLING_DECIMALS && two.decimals >= TELLING_DECIMALS;
}

/** "lat/lon" or "lon, lat" before a pair. */
function headingAt(tokens: readonly Token[], start: number): { axes: [Axis, Axis]; end: number } | null {
  const one = tokens[start]!;
  if (one.kind !== 'label') return null;
  const at = skipGaps(tokens, start + 1);
  const two = tokens[at];
  if (two?.kind !== 'label' || two.axis === one.axis) return null;
  let end = at + 1;
  while (tokens[end]?.kind === 'gap' || tokens[end]?.kind === 'colon') end++;
  return { axes: [one.axis, two.axis], end };
}

/** Bare numbers in a row, without marks, letters or signs between them, are shared out evenly: 2, 4 or 6 make a pair. */
function bareLimit(tokens: readonly Token[], start: number): number {
  let at = start;
  while (tokens[at]?.kind === 'number') at++;
  const count = at - start;
  const next = tokens[at];
  const shared = next === undefined || (next.kind !== 'letter' && next.kind !== 'sign' && next.kind !== 'mark');
  const isLast = shared && !readOrdinate(tokens, skipGaps(tokens, at), 3, null);
  return isLast && count % 2 === 0 && count > 0 ? Math.min(3, count / 2) : 3;
}

/** A dash with a space on both sides between two bare numbers. */
function beginsWithDash(tokens: readonly Token[], at: number, one: Ordinate, two: Ordinate): boolean {
  const dash = tokens[at];
  if (dash?.kind !== 'sign' || !dash.negative || dash.tight || tokens[at + 1]?.tight !== false) return false;
  return tokens[at - 1]?.kind !== 'gap' && one.axis === null && two.axis === null;
}

function skipGaps(tokens: readonly Token[], start: number): number {
  let at = start;
  for (let skipped = 0; skipped < 5; skipped++, at++) {
    const token = tokens[at];
    const dash = token?.kind === 'sign' && (tokens[at + 1]?.kind === 'letter' || tokens[at + 1]?.kind === 'label');
    if (token?.kind !== 'gap' && !dash && !(token?.kind === 'mark' && token.rank === 2)) break;
  }
  return at;
}

/** True where the tokens from `start` to `end` say nothing. */
function isRest(tokens: readonly Token[], start: number, end: number): boolean {
  for (let at = start; at < end; at++) {
    const token = tokens[at]!;
    if (token.kind === 'word' && !beside.has(token.text)) return false;
    if (token.kind === 'number' || token.kind === 'letter' || token.kind === 'label') return false;
  }
  return true;
}
