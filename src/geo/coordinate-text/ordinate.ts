import type { Axis, Token } from './tokens.ts';

/** One number of a position as written. */
export interface Ordinate {
  readonly degrees: number;
  /** The last written digit, degrees. */
  readonly stepDeg: number;
  readonly axis: Axis | null;
  /** True where N, S, E or W stands with it. */
  readonly lettered: boolean;
  readonly signed: boolean;
  /** True where a minus stands with S or W, which may mean either. */
  readonly twiceNegative: boolean;
  /** 1 degrees, 2 with minutes, 3 with seconds. */
  readonly parts: 1 | 2 | 3;
  /** Decimals of the last part. */
  readonly decimals: number;
  readonly marked: boolean;
  readonly packed: boolean;
  /** What is wrong with it, as the end of a sentence, or null. */
  readonly fault: string | null;
  /** Index of the token after it. */
  readonly end: number;
}

/**
 * The ordinate that begins at token `start`, or null where none does. At most `limit` parts are taken: degrees, minutes,
 * seconds. `axis` is what a heading before the pair says.
 */
export function readOrdinate(
  tokens: readonly Token[],
  start: number,
  limit: number,
  axis: Axis | null,
): Ordinate | null {
  let at = start;
  const label = labelAt(tokens, at);
  if (label) at = label.end;
  const before = letterAt(tokens, at);
  if (before) at = skipQuotes(tokens, at + 1);
  const dash = tokens[at];
  if (dash?.kind === 'sign') at++;
  const number = tokens[at];
  if (number?.kind !== 'number') return null;
  const run = readParts(tokens, at, limit);
  at = run.end;
  const behind = before ? null : letterAt(tokens, at);
  if (behind) at++;
  const letter = before ?? behind;
  // A dash that stands apart from a number with a letter is a bullet or stands between two numbers.
  const sign = dash?.kind === 'sign' && (number.tight || !letter) ? dash : null;
  const unpacked = run.marked ? null : unpack(run.texts, letter?.axis ?? null);
  const texts = unpacked ?? run.texts;
  const value = texts.reduce((sum, part, i) => sum + Number(part) / 60 ** i, 0);
  const decimals = texts.at(-1)!.split('.')[1]?.length ?? 0;
  const signedNegative = sign?.negative ?? false;
  const negative = signedNegative || (letter?.negative ?? false);
  const found = letter?.axis ?? label?.axis ?? axis;
  return {
    degrees: negative ? -value : value,
    stepDeg: 10 ** -decimals / 60 ** (texts.length - 1),
    axis: found,
    lettered: letter !== null,
    signed: sign !== null,
    twiceNegative: signedNegative && (letter?.negative ?? false),
    parts: texts.length as 1 | 2 | 3,
    decimals,
    marked: run.marked,
    packed: unpacked !== null,
    fault:
      run.fault ??
      partsFault(texts) ??
      contradiction(letter, sign, label?.axis ?? axis) ??
      (found !== null && value > (found === 'lat' ? 90 : 180) ? rangeFault(found, value) : null),
    end: at,
  };
}

interface Run {
  readonly texts: string[];
  readonly marked: boolean;
  readonly fault: string | null;
  readonly end: number;
}

/** Degrees and what belongs to them: numbers with their marks, with spaces between, or with colons between. */
function readParts(tokens: readonly Token[], start: number, limit: number): Run {
  const texts: string[] = [];
  let marked = false;
  let byWord = false;
  let colons: boolean | null = null;
  let at = start;
  for (;;) {
    const number = tokens[at];
    if (number?.kind !== 'number') break;
    const mark = markAfter(tokens, at + 1, texts.length, byWord);
    if (texts.length > 0 && !continues(texts, number.text, mark, limit, tokens[at + 1]?.kind === 'letter')) break;
    texts.push(number.text);
    at++;
    if (mark === texts.length - 1) {
      marked = true;
      byWord ||= isWordMark(tokens[at]!);
      at++;
    } else if (mark !== null && mark > texts.length - 1 && texts.length > 1) {
      return { texts, marked, fault: 'has seconds without minutes', end: at + 1 };
    } else if (mark === 2) {
      at++; // A closing quotation mark, not seconds.
    }
    const colon = tokens[at]?.kind === 'colon' && tokens[at + 1]?.kind === 'number';
    if (colons !== null && colons !== colon) break;
    if (colon && texts.length < limit && !marked) {
      colons = true;
      at++;
    } else if (texts.length === 1) colons = false;
  }
  if (tokens[at - 1]?.kind === 'colon') at--;
  return { texts, marked, fault: null, end: at };
}

/** True where a further number can be minutes or seconds of what came before it. */
const continues = (
  texts: readonly string[],
  text: string,
  mark: number | null,
  limit: number,
  lettered: boolean,
): boolean =>
  texts.length < Math.min(limit, 3) &&
  !texts.at(-1)!.includes('.') &&
  mark !== 0 &&
  (Number(text) < 60 || mark === texts.length || lettered) &&
  text.split('.')[0]!.length <= 2;

/** Rank of the mark at a token: 0 degrees, 1 minutes, 2 seconds. A single S is seconds only after words for the others. */
function markAfter(tokens: readonly Token[], at: number, part: number, byWord: boolean): number | null {
  const token = tokens[at];
  if (token?.kind === 'mark') return token.rank;
  const seconds = part === 2 && byWord && token?.kind === 'letter' && token.text === 'S' && token.tight;
  return seconds ? 2 : null;
}

const isWordMark = (token: Token): boolean => token.kind === 'letter' || (token.kind === 'mark' && token.word);

function labelAt(tokens: readonly Token[], at: number): { axis: Axis; end: number } | null {
  const token = tokens[at];
  if (token?.kind !== 'label') return null;
  let end = at + 1;
  for (let skipped = 0; skipped < 4; skipped++, end++) {
    const next = tokens[end];
    if (next?.kind !== 'gap' && next?.kind !== 'colon' && next?.kind !== 'mark') break;
  }
  return { axis: token.axis, end };
}

function letterAt(tokens: readonly Token[], at: number) {
  const token = tokens[at];
  return token?.kind === 'letter' ? token : null;
}

const skipQuotes = (tokens: readonly Token[], at: number): number => (tokens[at]?.kind === 'colon' ? at + 1 : at);

/**
 * Degrees run together with minutes, or with minutes and seconds: 4400.741 N, 440044 N, 12803.407 W, 1280324 W. Only with a
 * letter, which says how many digits are degrees.
 */
function unpack(texts: readonly string[], axis: Axis | null): string[] | null {
  const [whole, decimals] = texts[0]!.split('.');
  const degrees = axis === 'lat' ? 2 : 3;
  if (axis === null || texts.length !== 1 || (whole!.length !== degrees + 2 && whole!.length !== degrees + 4))
    return null;
  const parts = [whole!.slice(0, degrees), whole!.slice(degrees, degrees + 2), whole!.slice(degrees + 2)].filter(
    Boolean,
  );
  if (decimals) parts[parts.length - 1] += `.${decimals}`;
  return parts;
}

function partsFault(texts: readonly string[]): string | null {
  if (texts.slice(0, -1).some((part) => part.includes('.'))) return 'has a fraction before its last part';
  if (texts.slice(1).some((part) => Number(part) >= 60)) return 'has 60 or more minutes or seconds';
  return null;
}

function contradiction(
  letter: { axis: Axis; negative: boolean } | null,
  sign: { negative: boolean } | null,
  axis: Axis | null,
) {
  if (letter && axis && letter.axis !== axis) return 'has a letter that does not fit its heading';
  if (letter && sign?.negative && !letter.negative) return 'has a minus with N or E';
  if (letter?.negative && sign && !sign.negative) return 'has a plus with S or W';
  return null;
}

const rangeFault = (axis: Axis, value: number): string =>
  `has a ${axis === 'lat' ? 'latitude' : 'longitude'} of ${value.toFixed(4)}, which is not on the Earth`;
