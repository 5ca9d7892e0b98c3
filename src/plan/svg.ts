import { heldWidth } from './letter-widths.ts';

/** An attribute value or text made inert: markup and control characters cannot leave it. */
export const escapeXml = (text: string): string =>
  text
    .replace(/[^\t\n\r\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]|[\u202A-\u202E\u2066-\u2069]/gu, '')
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    .replace(/"/g, '&quot;')
    .replace(/'/g, '&#39;');

type Attributes = Readonly<Record<string, string | number | undefined>>;

/** A number as SVG writes it: at most two decimals. */
export const num = (value: number): string => String(Math.round(value * 100) / 100);

/** One SVG element; `children` is markup that is already escaped. */
export function element(name: string, attributes: Attributes, children = ''): string {
  let open = `<${name}`;
  for (const [key, value] of Object.entries(attributes)) {
    if (value !== undefined) open += ` ${key}="${typeof value === 'number' ? num(value) : escapeXml(value)}"`;
  }
  return children === '' ? `${open}/>` : `${open}>${children}</${name}>`;
}

/** Path data through points given as x, y pairs (stride 2). */
export function pathThrough(points: readonly number[]): string {
  let d = '';
  for (let i = 0; i + 1 < points.length; i += 2) d += `${i === 0 ? 'M' : 'L'}${num(points[i]!)} ${num(points[i + 1]!)}`;
  return d;
}

/** A text element; in the sheet's faces it keeps its measured width whatever face a device sets it in. */
export const text = (x: number, y: number, words: string, attributes: Attributes = {}): string =>
  element('text', { x, y, ...attributes, ...heldWidth(words, attributes) }, escapeXml(words));
