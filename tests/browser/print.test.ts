import { readFileSync } from 'node:fs';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { readBook, readRoads } from '../../src/io/index.ts';
import { fileSource } from '../../src/io/node/index.ts';
import {
  inRoadOrder,
  type PlanSheet,
  planPageSvg,
  planSheetHtml,
  type SheetOptions,
  sheetBookHtml,
  sheetOfBook,
} from '../../src/plan/index.ts';
import { indexRoads } from '../../src/road/index.ts';
import { completeStudy, STOP_LINE } from '../../src/study/index.ts';
import { demoDistrict } from '../helpers/demo-district.ts';
import { type PdfPage, readPdf, type Stroke } from '../helpers/read-pdf.ts';
import { launchChromium, withoutChromium } from './chromium.ts';
import { phone } from './page.ts';

const FOOT_MM = 304.8;
const printings = [
  { paper: 'letter', units: 'us', widthMm: 215.9, heightMm: 279.4 },
  { paper: 'a4', units: 'metric', widthMm: 210, heightMm: 297 },
] as const;

describe.skipIf(withoutChromium())('plan sheets of the demo district, printed', () => {
  let browser: Browser;
  let sheets: PlanSheet[] = [];
  const printed = new Map<string, PdfPage[]>();

  const print = async (options: SheetOptions): Promise<PdfPage[]> => {
    const page = await browser.newPage({ javaScriptEnabled: false });
    const asked: string[] = [];
    page.on('request', (request) => asked.push(request.url()));
    await page.setContent(sheetBookHtml(sheets, options));
    const pdf = await page.pdf({ preferCSSPageSize: true, printBackground: false });
    await page.close();
    expect(asked.filter((url) => !url.startsWith('data:') && url !== 'about:blank')).toEqual([]);
    return readPdf(pdf);
  };

  beforeAll(async () => {
    browser = await launchChromium();
    const source = fileSource('data/demo/tamarrow.brinkbook');
    const { book } = await readBook(source);
    await source.close?.();
    const roads = indexRoads(readRoads(readFileSync('data/demo/roads.geojson', 'utf8'), 'roads.geojson'));
    const district = await demoDistrict();
    const request = { roads, today: '2026-01-01', address: null, photos: [] };
    for (const site of district.sites) {
      const work = await district.ground(site);
      const study = completeStudy(work, { ...district.request(site), ground: work.ground });
      sheets.push(sheetOfBook(book, site.id, study, request)!);
    }
    await district.close();
    sheets = inRoadOrder(sheets);
    for (const options of printings) printed.set(options.paper, await print(options));
  }, 120_000);

  afterAll(async () => {
    await browser?.close();
  });

  test.each(printings)('$paper: one page a site, its card on the next, of the right size', (options) => {
    const pages = printed.get(options.paper)!;
    expect(sheets).toHaveLength(20);
    expect(pages).toHaveLength(1 + 2 * sheets.length);
    for (const { widthMm, heightMm } of pages) {
      expect(Math.abs(widthMm - options.widthMm)).toBeLessThan(0.5);
      expect(Math.abs(heightMm - options.heightMm)).toBeLessThan(0.5);
    }
    sheets.forEach(({ site }, i) => {
      expect(pages[1 + 2 * i]!.text).toContain(site.name);
      expect(pages[2 + 2 * i]!.text).toContain(`Check card, ${site.name}`);
    });
  });

  test.each(printings)('$paper: the text can be selected', (options) => {
    const pages = printed.get(options.paper)!;
    sheets.forEach(({ study }, i) => {
      const words = pages[1 + 2 * i]!.text.replace(/\s+/g, ' ');
      for (const part of ['Planning estimate from elevation data.', 'US National Grid', 'must measure 100 mm'])
        expect(words).toContain(part);
      // What else stops stands between the stop line and the rest.
      const rest = study.sentence.replace(STOP_LINE, '');
      expect(words.replace(/\s/g, '')).toContain(rest.replace(/\s/g, ''));
      if (rest !== study.sentence) expect(words.replace(/\s/g, '')).toContain(STOP_LINE.replace(/\s/g, ''));
      expect(words).not.toMatch(/\bsafe\b|adequate|approved/i);
    });
  });

  test.each(printings)('$paper: lengths in the drawing are right to 1 % when measured', (options) => {
    const pages = printed.get(options.paper)!;
    let measured = 0;
    sheets.forEach(({ study, site }, i) => {
      const { text, strokes } = pages[1 + 2 * i]!;
      // The check bar on every page, to a twentieth of a millimetre.
      expect(nearest(strokes, 100, isLevel), site.id).toBeCloseTo(100, 1);
      if (!study.descent || !study.edge) return;
      const perM = perMetreMm(text);
      const { horizontalM, dropM, end } = study.descent;
      const fallM = study.edge.elevationM - end.elevationM;
      expect(Math.abs(fallM - dropM)).toBeLessThan(0.01);
      for (const [lengthM, way] of [
        [horizontalM, isLevel],
        [dropM, isUpright],
      ] as const) {
        expect(Math.abs(nearest(strokes, lengthM * perM, way) / (lengthM * perM) - 1), site.id).toBeLessThan(0.01);
        measured++;
      }
    });
    expect(measured).toBeGreaterThan(30);
  });

  test('on a phone every sheet is read in one column, nothing to the side, no letter under 10 pixels, no line under 11', async () => {
    const context = await browser.newContext({ ...phone, javaScriptEnabled: false });
    const page = await context.newPage();
    for (const sheet of sheets) {
      await page.setContent(planSheetHtml(sheet, { paper: 'letter', units: 'us' }));
      const shown = page.locator('.phone-sheet');
      const box = (await shown.boundingBox())!;
      expect([box.x, box.width]).toEqual([0, 390]);
      expect(await page.locator('.plan-sheet').isVisible()).toBe(false);
      const seen = await page.evaluate(() => {
        const root = document.documentElement;
        const scale = (element: SVGGraphicsElement): number => {
          const { a, b } = element.getScreenCTM()!;
          return Math.hypot(a, b);
        };
        const texts = [...document.querySelectorAll<SVGTextElement>('.phone-sheet text')].map((text) => {
          const { left, right } = text.getBoundingClientRect();
          return { words: text.textContent, left, right, px: Number(text.getAttribute('font-size')) * scale(text) };
        });
        return { overX: root.scrollWidth - root.clientWidth, texts };
      });
      expect(seen.overX).toBe(0);
      expect(seen.texts.filter(({ left, right }) => left < 0 || right > 390)).toEqual([]);
      expect(seen.texts.filter(({ px }) => px < 10)).toEqual([]);
      const running = seen.texts.filter(({ words }) => words && words.length > 25);
      expect(Math.min(...running.map(({ px }) => px)), sheet.site.id).toBeGreaterThan(11);
    }
    await context.close();
  }, 60_000);

  test.each(printings)('$paper: the roads around are shown 35 mm wide and more, every site', (options) => {
    for (const sheet of sheets) {
      const [frame] = /<rect [^>]*class="locator"[^>]*>/.exec(planPageSvg(sheet, options))!;
      const width = Number(/ width="([\d.]+)"/.exec(frame)![1]);
      expect((width / 96) * 25.4, sheet.site.id).toBeGreaterThan(34.9);
    }
  });

  test.each(printings)(
    '$paper: lines keep their width on a device that has none of the faces',
    async (options) => {
      const page = await browser.newPage({ viewport: { width: 900, height: 1200 } });
      for (const sheet of sheets) {
        const html = planSheetHtml(sheet, options);
        await page.setContent(html.replace('</style>', 'text { font-family: monospace !important }</style>'));
        const lines = await page.evaluate(() =>
          [...document.querySelectorAll<SVGGraphicsElement>('.page text[textLength], .page tspan[textLength]')].map(
            (line) => ({
              words: line.textContent,
              held: Number(line.getAttribute('textLength')),
              set: (line as SVGTextContentElement).getComputedTextLength(),
            }),
          ),
        );
        expect(lines.length).toBeGreaterThan(60);
        expect(lines.filter(({ held, set }) => Math.abs(set - held) > 0.5 + 0.01 * held)).toEqual([]);
        const over = await page.evaluate(() => {
          const list: string[] = [];
          for (const svg of document.querySelectorAll<SVGSVGElement>('.page svg.plan-sheet, .page svg.check-card')) {
            const { left, right, width: shown } = svg.getBoundingClientRect();
            const margin = shown * 0.04;
            for (const text of svg.querySelectorAll('text')) {
              const box = text.getBoundingClientRect();
              if (box.left < left + margin || box.right > right - margin) list.push(text.textContent ?? '');
            }
          }
          return list;
        });
        expect(over, sheet.site.id).toEqual([]);
      }
      await page.close();
    },
    120_000,
  );

  test('a place planned as high has no minutes and no team size, others have', () => {
    const pages = printed.get('letter')!;
    // "5 haul," or "5 haul (6 if attendants hang)", not the label of a haul field behind the name Engine 1.
    const told = /\d min\b|\d haul(?:,|\.| \()|to raise|attendants hang/;
    const bothSides = sheets.map(({ study }, i) => ({
      high: study.angle?.planAs === 'high',
      layouts: study.layouts.length,
      words: `${pages[1 + 2 * i]!.text} ${pages[2 + 2 * i]!.text}`.replace(/\s+/g, ' '),
    }));
    for (const { words } of bothSides.filter(({ high }) => high)) {
      expect(words).toMatch(/Technical rope team needed\..*Do not lower\./);
      expect(told.exec(words)?.[0] ?? null).toBeNull();
    }
    for (const { words } of bothSides.filter(({ high, layouts }) => !high && layouts > 0)) expect(words).toMatch(told);
    expect(bothSides.filter(({ high }) => high).length).toBeGreaterThan(2);
  });
});

/** Millimetres on paper of a metre, from the scale that the sheet itself names. */
function perMetreMm(text: string): number {
  const us = /1 in = (\d+) ft/.exec(text);
  if (us) return (25.4 / (Number(us[1]) * FOOT_MM)) * 1000;
  return 1000 / Number(/1 : (\d+)/.exec(text)![1]);
}

const isLevel = ({ from, to }: Stroke): boolean => Math.abs(from[1] - to[1]) < 0.05;
const isUpright = ({ from, to }: Stroke): boolean => Math.abs(from[0] - to[0]) < 0.05;

/** The length of the stroke that comes nearest to an expected one, millimetres. */
const nearest = (strokes: readonly Stroke[], expected: number, way: (stroke: Stroke) => boolean): number =>
  strokes
    .filter(way)
    .reduce((best, { lengthMm }) => (Math.abs(lengthMm - expected) < Math.abs(best - expected) ? lengthMm : best), 0);
