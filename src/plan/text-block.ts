import { text } from './svg.ts';
import { advance } from './text-width.ts';
import { wrap } from './wrap.ts';

type BlockPen = {
  readonly class: string;
  readonly 'font-size': number;
  readonly 'font-family': string;
  readonly fill: string;
};

/** Running text in a width; `y` is the top. Returns its height, drawing units. */
export function textBlock(
  words: string,
  { x, y, width }: { x: number; y: number; width: number },
  pen: BlockPen,
  stack: 'sans' | 'serif',
): { svg: string; height: number } {
  const size = pen['font-size'];
  const leading = Math.round(size * 1.32);
  const lines = wrap(words, width, advance(size, stack));
  const svg = lines.map((line, i) => text(x, y + size + i * leading, line, pen)).join('');
  return { svg, height: lines.length * leading + 2 };
}
