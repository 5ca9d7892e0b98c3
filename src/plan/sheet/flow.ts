import { heldWidth, lineWidth } from '../letter-widths.ts';
import { element, pathThrough, text } from '../svg.ts';
import { linesOf, widthOf } from './measure.ts';
import { sheetPens, type TextPen } from './sheet-pens.ts';

export interface Place {
  readonly x: number;
  readonly y: number;
  readonly width: number;
}

/** A piece of a page and how high it came out, drawing units. */
export interface Block {
  readonly svg: string;
  readonly height: number;
}

/** Draws a piece into a width, its top at y. Pure: drawn once to be measured and again in its place. */
export type Draw = (place: Place) => Block;

/** Pieces under one another; empty ones take no gap. */
export const stack =
  (draws: readonly Draw[], gap: number): Draw =>
  (place) => {
    let svg = '';
    let height = 0;
    for (const draw of draws) {
      const block = draw({ ...place, y: place.y + (height > 0 ? height + gap : 0) });
      if (block.height === 0) continue;
      svg += block.svg;
      height += block.height + (height > 0 ? gap : 0);
    }
    return { svg, height };
  };

/** Height of a piece in a width. */
export const heightOf = (draw: Draw, width: number): number => draw({ x: 0, y: 0, width }).height;

/** Running text; `strong` opening words stand in bold where the first line holds them. */
export const paragraph =
  (words: string, pen: TextPen, strong = ''): Draw =>
  ({ x, y, width }) => {
    const size = pen['font-size'];
    const leading = Math.round(size * 1.22 * 10) / 10;
    const lines = linesOf(words, width, pen);
    const svg = lines.map((line, i) => {
      const at = y + size * 0.92 + i * leading;
      if (i > 0 || strong === '' || !line.startsWith(strong)) return text(x, at, line, pen);
      const rest = text(0, 0, line.slice(strong.length)).replace(/^<text[^>]*>|<\/text>$/gu, '');
      const bold = text(0, 0, strong).replace(/^<text[^>]*>|<\/text>$/gu, '');
      const heavy = { ...pen, 'font-weight': 700 };
      // Each part is held at its own width; the second begins where the first must end.
      const split = x + lineWidth(strong, heavy);
      return element(
        'text',
        { ...pen, x, y: at },
        element('tspan', { 'font-weight': 700, ...heldWidth(strong, heavy) }, bold) +
          element('tspan', { x: split, ...heldWidth(line.slice(strong.length), pen) }, rest),
      );
    });
    return { svg: svg.join(''), height: lines.length === 0 ? 0 : lines.length * leading };
  };

/** A heading over a thin rule, with an optional note at its right end. */
export const heading =
  (words: string, note = ''): Draw =>
  ({ x, y, width }) => {
    const pen = sheetPens.blockHeading;
    const [first = ''] = linesOf(words, width, pen);
    const right = note === '' ? '' : text(x + width, y + 12, note, { ...sheetPens.number, 'text-anchor': 'end' });
    const rule = element('path', { ...lineOf(0.8), d: pathThrough([x, y + 17, x + width, y + 17]) });
    return { svg: text(x, y + 12, first, pen) + right + rule, height: 20 };
  };

/** What is called something on the left and its figure at the right end; the left wraps beside the right. */
export const row =
  (left: string, right: string, strong = false): Draw =>
  ({ x, y, width }) => {
    const rightPen = strong ? sheetPens.numberStrong : sheetPens.number;
    const leftPen = strong ? sheetPens.textStrong : sheetPens.text;
    const rightWidth = widthOf(right, rightPen);
    if (rightWidth > width * 0.66) return stack([paragraph(`${left}: ${right}`, leftPen)], 0)({ x, y, width });
    const block = paragraph(left, leftPen)({ x, y, width: width - rightWidth - 6 });
    const figure = text(x + width, y + leftPen['font-size'] * 0.92, right, { ...rightPen, 'text-anchor': 'end' });
    return { svg: block.svg + figure, height: block.height };
  };

/** Numbered or signed items, their sign in a gutter. */
export const item =
  (sign: string, words: string, pen: TextPen = sheetPens.text, gutter = 14): Draw =>
  ({ x, y, width }) => {
    const block = paragraph(words, pen)({ x: x + gutter, y, width: width - gutter });
    const mark = text(x, y + pen['font-size'] * 0.92, sign, sheetPens.numberStrong);
    return { svg: mark + block.svg, height: block.height };
  };

/** As many pieces as fit into a height; how many were left out is told in the last line. */
export const fitting =
  (draws: readonly Draw[], gap: number, mostHeight: number, where = 'in the study'): Draw =>
  (place) => {
    const whole = stack(draws, gap)(place);
    if (whole.height <= mostHeight) return whole;
    for (let n = draws.length - 1; n >= 0; n--) {
      const told = paragraph(`and ${draws.length - n} more ${where}`, sheetPens.textNote);
      const cut = stack([...draws.slice(0, n), told], gap)(place);
      if (cut.height <= mostHeight || n === 0) return cut;
    }
    return whole;
  };

/** A frame around a piece. */
export const boxed =
  (draw: Draw, pad = 7): Draw =>
  ({ x, y, width }) => {
    const inner = draw({ x: x + pad, y: y + pad, width: width - 2 * pad });
    if (inner.height === 0) return inner;
    const height = inner.height + 2 * pad;
    return { svg: element('rect', { ...lineOf(1), x, y, width, height }) + inner.svg, height };
  };

/** A piece that a tap anywhere in it follows; the style sheet of a screen underlines what is of the class `tap`. */
export const linked =
  (href: string, draw: Draw): Draw =>
  (place) => {
    const { svg, height } = draw(place);
    const all = { x: place.x, y: place.y - 3, width: place.width, height: height + 6, fill: '#ffffff' };
    return { svg: element('a', { href }, element('rect', all) + svg), height };
  };

export const tapped =
  (draw: Draw): Draw =>
  (place) => {
    const block = draw(place);
    return { ...block, svg: element('g', { class: 'tap' }, block.svg) };
  };

/** A plain black line. */
export const lineOf = (width: number) => ({ fill: 'none', stroke: '#000000', 'stroke-width': width }) as const;

/** A rule across. */
export const ruleAcross: Draw = ({ x, y, width }) => ({
  svg: element('path', { ...lineOf(1), d: pathThrough([x, y + 0.5, x + width, y + 0.5]) }),
  height: 1,
});
