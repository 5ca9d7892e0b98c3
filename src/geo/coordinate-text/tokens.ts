export type Axis = 'lat' | 'lon';

/** One meaningful piece of a tidy text. `tight` means that no space stands before it. */
export type Token = { readonly tight: boolean } & (
  | { readonly kind: 'number'; readonly text: string }
  | { readonly kind: 'mark'; readonly rank: 0 | 1 | 2; readonly word: boolean }
  | { readonly kind: 'letter'; readonly axis: Axis; readonly negative: boolean; readonly text: string }
  | { readonly kind: 'label'; readonly axis: Axis }
  | { readonly kind: 'sign'; readonly negative: boolean }
  | { readonly kind: 'colon' }
  | { readonly kind: 'gap' }
  | { readonly kind: 'word'; readonly text: string }
);

const PIECE = /(\d+(?:\.\d+)*)|(\p{L}+)|([°'"])|([+-])|(:)|([^\s])/gu;

/** Cuts a tidy text (`tidyText`) into tokens. */
export function tokensOf(tidy: string): Token[] {
  const tokens: Token[] = [];
  let end = 0;
  for (const match of tidy.matchAll(PIECE)) {
    const tight = match.index === end;
    if (tidy.slice(end, match.index).includes('\n')) tokens.push({ kind: 'gap', tight: false });
    end = match.index + match[0].length;
    tokens.push(tokenOf(match, tight, tokens.at(-1)));
  }
  return tokens;
}

function tokenOf(match: RegExpExecArray, tight: boolean, last: Token | undefined): Token {
  const [, number, word, mark, sign] = match;
  if (number !== undefined) {
    // 1.2.3 is a version or a date, and a letter glued before digits makes a name (E5, MM12) unless it is N, S, E or W.
    return number.split('.').length > 2
      ? { kind: 'word', text: number, tight }
      : { kind: 'number', text: number, tight };
  }
  if (word !== undefined) return wordToken(word, tight, last);
  if (mark !== undefined) return { kind: 'mark', rank: mark === '°' ? 0 : mark === "'" ? 1 : 2, word: false, tight };
  if (sign !== undefined) return { kind: 'sign', negative: sign === '-', tight };
  return match[5] === undefined ? { kind: 'gap', tight } : { kind: 'colon', tight };
}

function wordToken(word: string, tight: boolean, last: Token | undefined): Token {
  const letter = letters[word];
  if (letter) return { kind: 'letter', ...letter, text: word, tight };
  const axis = labels[word];
  if (axis) return { kind: 'label', axis, tight };
  const rank = markWords[word];
  if (rank !== undefined && last?.kind === 'number') return { kind: 'mark', rank, word: true, tight };
  if (word === 'AND' || word === 'BY') return { kind: 'gap', tight };
  return { kind: 'word', text: word, tight };
}

const north = { axis: 'lat', negative: false } as const;
const south = { axis: 'lat', negative: true } as const;
const east = { axis: 'lon', negative: false } as const;
const west = { axis: 'lon', negative: true } as const;

const table = <T>(rows: Record<string, T>): Readonly<Record<string, T | undefined>> =>
  Object.assign(Object.create(null), rows);

const letters = table<{ axis: Axis; negative: boolean }>({
  N: north,
  NORTH: north,
  S: south,
  SOUTH: south,
  E: east,
  EAST: east,
  W: west,
  WEST: west,
});

const labels = table<Axis>({
  LAT: 'lat',
  LATITUDE: 'lat',
  Y: 'lat',
  LON: 'lon',
  LONG: 'lon',
  LNG: 'lon',
  LONGITUDE: 'lon',
  X: 'lon',
});

const markWords = table<0 | 1 | 2>({
  D: 0,
  DEG: 0,
  DEGS: 0,
  DEGREE: 0,
  DEGREES: 0,
  M: 1,
  MIN: 1,
  MINS: 1,
  MINUTE: 1,
  MINUTES: 1,
  SEC: 2,
  SECS: 2,
  SECOND: 2,
  SECONDS: 2,
});
