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

/** What tells the width of a line: face, weight and size. */
export interface Lettering {
  readonly 'font-family': string;
  readonly 'font-size': number;
  readonly 'font-weight'?: number;
}

/** The faces that the table is of, as the sheet names them. */
export const measuredFaces = {
  words: '"Times New Roman","Liberation Serif",Times,serif',
  figures: 'Arial,"Liberation Sans",Helvetica,sans-serif',
} as const;

/** Width of a line of text, drawing units; letters that the table does not have are taken as wide ones. */
export function lineWidth(words: string, pen: Lettering): number {
  const table = tableOf(pen);
  let sum = 0;
  for (const letter of words) sum += table[letter.charCodeAt(0) - 32] ?? NARROW[letter] ?? otherWidth(letter);
  return (sum / 1000) * pen['font-size'];
}

/**
 * Attributes that hold a line at its measured width, so that a device without these faces, which sets it in a wider one, squeezes
 * it rather than running it over its neighbour or off the page. None for other faces and for letters whose width is a guess.
 */
export function heldWidth(
  words: string,
  pen: Partial<Lettering> | Readonly<Record<string, string | number | undefined>>,
): { readonly textLength?: number; readonly lengthAdjust?: string } {
  const [family, size] = [pen['font-family'], pen['font-size']];
  if (family !== measuredFaces.words && family !== measuredFaces.figures) return {};
  if (typeof size !== 'number' || words.trim() === '' || !isMeasured(words)) return {};
  const weight = pen['font-weight'];
  const lettering = {
    'font-family': family,
    'font-size': size,
    ...(typeof weight === 'number' && { 'font-weight': weight }),
  };
  return { textLength: lineWidth(words, lettering), lengthAdjust: 'spacingAndGlyphs' };
}

function tableOf(pen: Lettering): readonly number[] {
  const bold = (pen['font-weight'] ?? 400) >= 600;
  if (pen['font-family'] === measuredFaces.figures) return bold ? advances.sansBold : advances.sans;
  return bold ? advances.serifBold : advances.serif;
}

const otherWidth = (letter: string): number => (letter.charCodeAt(0) >= SQUARE_FROM ? SQUARE : OTHER);

const isMeasured = (words: string): boolean =>
  [...words].every((letter) => (letter >= ' ' && letter <= '~') || NARROW[letter] !== undefined);
