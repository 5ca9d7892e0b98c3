export type PaperName = 'letter' | 'a4';

/** A page, in drawing units of 96 to the inch; `cssSize` is its name in a style sheet. */
export interface Paper {
  readonly name: PaperName;
  readonly cssSize: string;
  readonly widthMm: number;
  /** One millimetre under the sheet: a page box that is exactly full can spill onto a second page. */
  readonly heightMm: number;
  readonly width: number;
  readonly height: number;
  readonly margin: number;
}

/** Drawing units per millimetre. */
export const PER_MM = 96 / 25.4;

const paper = (name: PaperName, cssSize: string, widthMm: number, sheetMm: number): Paper => {
  const heightMm = sheetMm - 1;
  return {
    ...{ name, cssSize, widthMm, heightMm },
    width: widthMm * PER_MM,
    height: heightMm * PER_MM,
    margin: 9.5 * PER_MM,
  };
};

/** US letter (8.5 by 11 in) and A4 (210 by 297 mm), upright. */
export const papers: Readonly<Record<PaperName, Paper>> = {
  letter: paper('letter', 'letter portrait', 215.9, 279.4),
  a4: paper('a4', 'A4 portrait', 210, 297),
};
