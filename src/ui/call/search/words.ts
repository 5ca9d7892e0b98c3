/** Short forms in road names and what they stand for; common practice, no source. */
const longForms: Readonly<Record<string, string>> = {
  av: 'avenue',
  ave: 'avenue',
  blvd: 'boulevard',
  ck: 'creek',
  crk: 'creek',
  cr: 'creek',
  cyn: 'canyon',
  dr: 'drive',
  gr: 'grade',
  grd: 'grade',
  hts: 'heights',
  hwy: 'highway',
  ln: 'lane',
  mt: 'mount',
  mtn: 'mountain',
  pk: 'peak',
  qry: 'quarry',
  rd: 'road',
  rdg: 'ridge',
  rte: 'route',
  spr: 'spur',
  st: 'street',
  vly: 'valley',
};

/** The words of a text as they are compared: lower case, without accents and marks, short forms written out. */
export const wordsOf = (text: string): string[] =>
  text
    .normalize('NFKD')
    .replace(/\p{M}+/gu, '')
    .toLowerCase()
    .split(/[^\p{L}\p{N}.]+/u)
    .map((word) => word.replace(/^\.+|\.+$/g, ''))
    .filter((word) => word !== '')
    .map((word) => longForms[word] ?? word);

/** True where two words are the same but for one slip of the finger (five letters and more), or the first begins the second. */
export function isLike(typed: string, word: string): boolean {
  if (typed === word) return true;
  if (typed.length >= 3 && word.startsWith(typed)) return true;
  return typed.length >= 5 && slips(typed, word);
}

/** One letter more, fewer, other, or two swapped. */
function slips(a: string, b: string): boolean {
  if (Math.abs(a.length - b.length) > 1) return false;
  let i = 0;
  while (i < a.length && a[i] === b[i]) i++;
  let j = 0;
  while (j < Math.min(a.length, b.length) - i && a[a.length - 1 - j] === b[b.length - 1 - j]) j++;
  const left = a.slice(i, a.length - j);
  const right = b.slice(i, b.length - j);
  if (left.length <= 1 && right.length <= 1) return true;
  return left.length === 2 && right.length === 2 && left[0] === right[1] && left[1] === right[0];
}
