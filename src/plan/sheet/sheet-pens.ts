import { measuredFaces } from '../letter-widths.ts';
import { palettes } from '../palette.ts';
import { makePens } from '../pens.ts';

const { words, figures } = measuredFaces;

const type = (
  size: number,
  family: string,
  more: { readonly fill?: string; readonly 'font-weight'?: number; readonly 'font-style'?: string } = {},
) => ({
  fill: '#000000',
  'font-size': size,
  'font-family': family,
  'font-variant-numeric': 'lining-nums tabular-nums',
  ...more,
});

/** Type of one size and face, as presentation attributes. */
export type TextPen = ReturnType<typeof type>;

/** The drawing's pens in black, and the type of the sheet. Nothing is under 10 units, which is 7.5 pt on paper. */
export const sheetPens = {
  ...makePens(palettes.black, measuredFaces),
  siteName: type(26, words, { 'font-weight': 700 }),
  where: type(12.5, words),
  place: type(11.5, figures),
  plan: type(15, words),
  planSmall: type(13, words),
  stopText: type(20, words, { fill: '#ffffff', 'font-weight': 700 }),
  also: type(12, words, { 'font-weight': 700 }),
  blockHeading: type(13.5, words, { 'font-style': 'italic' }),
  boxHeading: type(13.5, words, { 'font-weight': 700 }),
  text: type(10.8, words),
  textStrong: type(10.8, words, { 'font-weight': 700 }),
  textNote: type(10.4, words, { 'font-style': 'italic' }),
  number: type(10.6, figures),
  numberStrong: type(10.6, figures, { 'font-weight': 700 }),
  print: type(10.2, words),
  cardName: type(23, words, { 'font-weight': 700 }),
  cardText: type(13, words),
  cardStrong: type(13, words, { 'font-weight': 700 }),
} as const;
