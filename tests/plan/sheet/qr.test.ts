import jsQR from 'jsqr';
import { describe, expect, it } from 'vitest';
import { planPageSvg, planSheetHtml } from '../../../src/plan/index.ts';
import { planSheetOf } from '../../helpers/plan-sheet.ts';
import { ofClass, readSvg } from '../../helpers/svg-reading.ts';

const PAGE_MM = 25.4 / 96;
/** A phone's camera an arm's length off sees a sheet no finer than this. */
const DPI = 200;

/** What a reader of another make finds on a page: the code's path filled on paper at a camera's resolution, then read. */
function readCode(page: string): string | null {
  const root = readSvg(page);
  const [path] = ofClass(root, 'path', 'qr');
  const perUnit = (PAGE_MM * DPI) / 25.4;
  const [width, height] = ['width', 'height'].map((side) =>
    Math.round((Number.parseFloat(root.getAttribute(side)!) / 25.4) * DPI),
  ) as [number, number];
  const pixels = new Uint8ClampedArray(4 * width * height).fill(255);
  const bars = [...path!.getAttribute('d')!.matchAll(/M(\S+) (\S+)h(\S+)v(\S+)h\S+z/g)].map((bar) =>
    bar.slice(1).map((figure) => Number(figure) * perUnit),
  ) as [number, number, number, number][];
  for (let y = 0; y < height; y++) {
    for (const [x0, y0, wide, high] of bars.filter((bar) => y + 0.5 >= bar[1] && y + 0.5 < bar[1] + bar[3])) {
      expect(high).toBeGreaterThan(0);
      expect(y0).toBeGreaterThanOrEqual(0);
      for (let x = Math.ceil(x0 - 0.5); x + 0.5 < x0 + wide; x++)
        pixels.fill(0, 4 * (y * width + x), 4 * (y * width + x) + 3);
    }
  }
  return jsQR(pixels, width, height, { inversionAttempts: 'dontInvert' })?.data ?? null;
}

describe('the code on a plan sheet, read back', () => {
  it('opens the site where the program is served', () => {
    const sheet = planSheetOf({ address: 'https://fire.example/tamarrow/' });
    const { lon, lat } = sheet.study.site;
    const at = `${lat.toFixed(5)},${lon.toFixed(5)}`;
    for (const paper of ['letter', 'a4'] as const)
      expect(readCode(planPageSvg(sheet, { paper, units: 'us' }))).toBe(
        `https://fire.example/tamarrow/call/#site=north-shelf&at=${at}`,
      );
  });

  it('is a place for a phone’s map where no address is known', () => {
    const sheet = planSheetOf();
    const { lon, lat } = sheet.study.site;
    const words = readCode(planPageSvg(sheet, { paper: 'letter', units: 'us' }));
    expect(words).toBe(`geo:${lat.toFixed(5)},${lon.toFixed(5)}`);
    // RFC 5870: coordinates as latitude, longitude.
    expect(words).toMatch(/^geo:-?\d+(?:\.\d+)?,-?\d+(?:\.\d+)?$/);
  });

  it('reads with the longest address that is taken', () => {
    const address = `https://fire.example/${'a'.repeat(98)}/`;
    const sheet = planSheetOf({ address });
    const words = readCode(planPageSvg(sheet, { paper: 'letter', units: 'us' }));
    expect(words?.startsWith(`${address}call/#site=north-shelf&at=`)).toBe(true);
  });

  it('stands once in a file, on the front', () => {
    const html = planSheetHtml(planSheetOf(), { paper: 'letter', units: 'us' });
    expect(html.match(/class="qr"/g)).toHaveLength(1);
  });
});
