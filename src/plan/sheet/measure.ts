import { lineWidth } from '../letter-widths.ts';
import type { TextPen } from './sheet-pens.ts';

/** A printer's own faces may run a little wider. */
const SPARE = 1.025;

/** Room that a line of text in a pen takes, drawing units. */
export const widthOf = (words: string, pen: TextPen): number => lineWidth(words, pen) * SPARE;

/** Words broken into lines no wider than a width; a word longer than a line is cut. A figure stays with its unit and with the name or the "of" before it. */
export function linesOf(words: string, width: number, pen: TextPen): string[] {
  const lines: string[] = [];
  let current = '';
  const glued = words.replace(/(\d) (?=[a-z(])/gu, '$1\u00a0').replace(/(\p{Lu}\p{Ll}+|\bof) (?=\d+\b)/gu, '$1\u00a0');
  for (const word of glued.split(/[ \t\n\r]+/u).flatMap((long) => chunks(long, width, pen))) {
    const longer = current === '' ? word : `${current} ${word}`;
    if (current !== '' && widthOf(longer, pen) > width) {
      lines.push(current);
      current = word;
    } else {
      current = longer;
    }
  }
  if (current !== '') lines.push(current);
  return lines.map((line) => line.replaceAll('\u00a0', ' '));
}

function chunks(word: string, width: number, pen: TextPen): string[] {
  if (widthOf(word, pen) <= width) return [word];
  const list: string[] = [];
  let current = '';
  for (const letter of word) {
    if (current !== '' && widthOf(current + letter, pen) > width) {
      list.push(current);
      current = '';
    }
    current += letter;
  }
  return [...list, current];
}
