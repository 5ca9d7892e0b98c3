import { encode } from 'uqr';
import type { LonLat } from '../../geo/index.ts';
import { element, num } from '../svg.ts';

/** Modules of paper around a code (ISO/IEC 18004 asks for four; recalled from memory). */
const QUIET = 4;
/** An address with its hash in a code is cut off at no length; a longer base than this is left out. */
const LONGEST = 120;

/**
 * What a site's code says: its page's address with site and position where the program is served somewhere, else its position as
 * a geo address (RFC 5870), which every phone opens in its map. Both stand behind the `#`, so that no host's log gets them.
 */
export function qrWords(address: string | null, siteId: string, { lon, lat }: LonLat): string {
  const at = `${lat.toFixed(5)},${lon.toFixed(5)}`;
  if (address === null || address.length > LONGEST || !/^https?:\/\//.test(address)) return `geo:${at}`;
  return `${address}call/#site=${siteId}&at=${at}`;
}

/** A QR code, error correction M, as one path in a square of `size` drawing units. */
export function qrSvg(words: string, x: number, y: number, size: number): string {
  const { data } = encode(words, { ecc: 'M', border: QUIET });
  const step = size / data.length;
  let d = '';
  data.forEach((line, row) => {
    for (let col = 0; col < line.length; col++) {
      if (!line[col]) continue;
      let run = 1;
      while (line[col + run]) run++;
      // Neighbours in a line are one bar, so that no hairline of paper parts them.
      d += `M${num(x + col * step)} ${num(y + row * step)}h${num(run * step)}v${num(step)}h${num(-run * step)}z`;
      col += run - 1;
    }
  });
  return element('path', { class: 'qr', fill: '#000000', 'shape-rendering': 'crispEdges', d });
}

/** A code as a picture of its own, black on white with its quiet zone, for a screen. */
export const codeSvg = (words: string): string =>
  element(
    'svg',
    { xmlns: 'http://www.w3.org/2000/svg', viewBox: '0 0 100 100', width: 100, height: 100 },
    element('rect', { width: 100, height: 100, fill: '#ffffff' }) + qrSvg(words, 0, 0, 100),
  );
