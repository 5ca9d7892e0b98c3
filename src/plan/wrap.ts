/** Words broken into lines of at most `width` drawing units at a mean advance per letter. */
export function wrap(words: string, width: number, advance: number): string[] {
  const most = Math.max(8, Math.floor(width / advance));
  const lines: string[] = [];
  let current = '';
  // A figure stays with its unit.
  const glued = words.replace(/(\d) (?=[a-z(])/gu, '$1\u00a0');
  for (const word of glued.split(/[ \t\n\r]+/u).flatMap((long) => chunks(long, most))) {
    if (current !== '' && current.length + 1 + word.length > most) {
      lines.push(current);
      current = word;
    } else {
      current = current === '' ? word : `${current} ${word}`;
    }
  }
  if (current !== '') lines.push(current);
  return lines.map((line) => line.replaceAll('\u00a0', ' '));
}

/** A word longer than a line is cut, since it must not run off the page. */
function chunks(word: string, most: number): string[] {
  const letters = [...word];
  const list: string[] = [];
  for (let i = 0; i < letters.length; i += most) list.push(letters.slice(i, i + most).join(''));
  return list;
}
