import type { TextPen } from './sheet-pens.ts';

/**
 * Advance of ASCII 32 to 126 in thousandths of the size. The sheet's faces share one set of metrics on every platform that
 * prints (Times New Roman and Arial, and the free faces made to match them), measured in a browser.
 */
const advances = {
  // biome-ignore format: a table reads as a table.
  serif: [
    250, 333, 408, 500, 500, 833, 778, 180, 333, 333, 500, 564, 250, 333, 250, 278, 500, 500, 500,
    500, 500, 500, 500, 500, 500, 500, 278, 278, 564, 564, 564, 444, 921, 722, 667, 667, 722, 611,
    556, 722, 722, 333, 389, 722, 611, 889, 722, 722, 556, 722, 667, 556, 611, 722, 722, 944, 722,
    722, 611, 333, 278, 333, 469, 500, 333, 444, 500, 444, 500, 444, 333, 500, 500, 278, 278, 500,
    278, 778, 500, 500, 500, 500, 333, 389, 278, 500, 500, 722, 500, 500, 444, 480, 200, 480, 541,
  ],
  // biome-ignore format: a table reads as a table.
  serifBold: [
    250, 333, 555, 500, 500, 1000, 833, 278, 333, 333, 500, 570, 250, 333, 250, 278, 500, 500, 500,
    500, 500, 500, 500, 500, 500, 500, 333, 333, 570, 570, 570, 500, 930, 722, 667, 722, 722, 667,
    611, 778, 778, 389, 500, 778, 667, 944, 722, 778, 611, 778, 722, 556, 667, 722, 722, 1000, 722,
    722, 667, 333, 278, 333, 581, 500, 333, 500, 556, 444, 556, 444, 333, 500, 556, 278, 333, 556,
    278, 833, 556, 500, 556, 556, 444, 389, 333, 556, 500, 722, 500, 500, 444, 394, 220, 394, 520,
  ],
  // biome-ignore format: a table reads as a table.
  sans: [
    278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556,
    556, 556, 556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556, 1015, 667, 667, 722, 722, 667,
    611, 778, 722, 278, 500, 667, 556, 833, 722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667,
    667, 611, 278, 278, 278, 469, 556, 333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500,
    222, 833, 556, 556, 556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584,
  ],
  // biome-ignore format: a table reads as a table.
  sansBold: [
    278, 333, 474, 556, 556, 889, 722, 238, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556,
    556, 556, 556, 556, 556, 556, 556, 333, 333, 584, 584, 584, 611, 975, 722, 722, 722, 722, 667,
    611, 778, 722, 278, 556, 722, 611, 833, 722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667,
    667, 611, 333, 278, 333, 584, 556, 333, 556, 611, 556, 611, 556, 333, 611, 611, 278, 278, 556,
    278, 889, 611, 611, 611, 611, 389, 556, 333, 611, 556, 778, 556, 556, 500, 389, 280, 389, 584,
  ],
} as const;

/** Any other letter is taken as a wide one of its kind: Latin with signs, or a square of an ideograph. */
const OTHER = 650;
const SQUARE = 1000;
const SQUARE_FROM = 0x1100;
const NARROW: Readonly<Record<string, number>> = { '’': 340, '′': 300, '°': 400, '·': 280, '\u00a0': 280 };
/** A printer's own faces may run a little wider. */
const SPARE = 1.025;

/** Width of a line of text in a pen, drawing units. */
export function widthOf(words: string, pen: TextPen): number {
  const bold = pen['font-weight'] === 700;
  const table = pen['font-family'].startsWith('Arial')
    ? bold
      ? advances.sansBold
      : advances.sans
    : bold
      ? advances.serifBold
      : advances.serif;
  let sum = 0;
  for (const letter of words)
    sum += table[letter.charCodeAt(0) - 32] ?? NARROW[letter] ?? (letter.charCodeAt(0) >= SQUARE_FROM ? SQUARE : OTHER);
  return (sum / 1000) * pen['font-size'] * SPARE;
}

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
