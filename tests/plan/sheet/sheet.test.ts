import { describe, expect, it } from 'vitest';
import {
  cardPageSvg,
  defaultCardLines,
  type PlanSheet,
  phonePageSvg,
  planPageSvg,
  planSheetHtml,
  type SheetOptions,
  sheetBookHtml,
} from '../../../src/plan/index.ts';
import { CAUTION, STOP_LINE } from '../../../src/study/index.ts';
import { planSheetOf } from '../../helpers/plan-sheet.ts';
import { hostileTexts } from '../../helpers/sample-book.ts';
import { studyWithLayouts } from '../../helpers/study-with-layouts.ts';
import { elementsOf, ofClass, readSvg } from '../../helpers/svg-reading.ts';

const letter: SheetOptions = { paper: 'letter', units: 'us' };
const a4: SheetOptions = { paper: 'a4', units: 'metric' };

/** The texts of a page in reading order, with single spaces. */
const textsOf = (svg: string): string =>
  elementsOf(readSvg(svg), 'text')
    .map(({ textContent }) => textContent)
    .join(' ')
    .replace(/\s+/g, ' ');

function highSheet(): PlanSheet {
  const study = studyWithLayouts();
  const angle = { ...study.angle!, class: 'high' as const, planAs: 'high' as const };
  return planSheetOf({}, { angle, sentence: `${STOP_LINE} Plan as high: 52°, 50 to 54 (rule 30/45).` });
}

describe('plan sheet', () => {
  it.each([letter, a4])('carries everything on a page of its size: $paper', (options) => {
    const sheet = planSheetOf({
      places: [
        {
          kind: 'landing zone',
          name: 'Far Field',
          at: { lon: -128.01, lat: 44.002 },
          vehicles: null,
          lengthM: 46,
          widthM: 33.5,
          hazards: 'wires east',
          on: null,
          notes: '',
        },
      ],
    });
    const svg = planPageSvg(sheet, options);
    const words = textsOf(svg);
    for (const part of [
      'North Shelf',
      'mile 3.43',
      CAUTION.slice(0, 40),
      'First five minutes',
      'The raise',
      'People and minutes',
      'Forces',
      'Whom to call',
      'Reach it, hazards',
      'Landing zone',
      'must measure 100 mm; else print at 100 %',
      'Not field-verified.',
      'Command 2',
      'US National Grid 9T',
      'Look up',
      'Blocking vehicle',
    ])
      expect(words).toContain(part);
    expect(words).toMatch(/44° 0\.0\d\d′ N, 128° 0\.0\d\d′ W/);
    expect(words.indexOf(sheet.study.sentence.slice(0, 20))).toBeGreaterThanOrEqual(0);
    expect(svg).not.toMatch(/NaN|undefined|Infinity|null/);
    const root = readSvg(svg);
    expect(root.getAttribute('width')).toBe(options.paper === 'a4' ? '210mm' : '215.9mm');
  });

  it('has a check bar of 100 mm and a millimetre that is 96/25.4 units on either paper', () => {
    for (const options of [letter, a4]) {
      const root = readSvg(planPageSvg(planSheetOf(), options));
      const [, , width] = root.getAttribute('viewBox')!.split(' ').map(Number);
      const perMm = width! / Number.parseFloat(root.getAttribute('width')!);
      const [, x0, x1] = /^M(\S+) \S+H(\S+)$/.exec(ofClass(root, 'path', 'check-bar')[0]!.getAttribute('d')!)!;
      expect((Number(x1) - Number(x0)) / perMm).toBeCloseTo(100, 1);
    }
  });

  it('prints nothing smaller than 7.5 pt, nothing outside its margins and no colour', () => {
    for (const sheet of [planSheetOf(), highSheet()]) {
      for (const svg of [planPageSvg(sheet, letter), cardPageSvg(sheet, letter)]) {
        const sizes = [...svg.matchAll(/font-size="([\d.]+)"/g)].map(([, size]) => Number(size));
        expect(Math.min(...sizes)).toBeGreaterThanOrEqual(10);
        expect(new Set([...svg.matchAll(/#[0-9a-f]{6}/gi)].map(([colour]) => colour.toLowerCase()))).toEqual(
          new Set(['#000000', '#ffffff', ...(svg.includes('#777777') ? ['#777777'] : [])]),
        );
        for (const each of elementsOf(readSvg(svg), 'text')) {
          const y = Number(each.getAttribute('y'));
          if (!each.getAttribute('transform')) expect(y).toBeLessThan(279.4 * (96 / 25.4));
        }
      }
    }
  });

  it('starts a high place with the stop line and gives no minutes and no team size', () => {
    const words = textsOf(planPageSvg(highSheet(), letter)) + textsOf(cardPageSvg(highSheet(), letter));
    expect(words).toContain('Technical rope team needed.');
    expect(words).toContain('Do not lower.');
    expect(words).toContain('First crew');
    expect(words).toContain('Whom to call, in this order');
    expect(words).toContain('For the technical team');
    expect(words.replace('no minutes and no team size are given for a high angle', '')).not.toMatch(
      /\d min\b|minutes|\d haul\b|to raise|to lower|attendants hang/,
    );
    // The plain sheet does give them, so that the line above can fail.
    expect(textsOf(planPageSvg(planSheetOf(), letter))).toMatch(/\d min\b/);
  });

  it('marks what was measured beside what it took the place of, and says what stops once', () => {
    const row = {
      ...({ computed: 33.4, computedRange: [31.8, 35.1], stretchM: [11, 16], sigma: 1, readings: 1 } as const),
      ...({
        betters: false,
        tool: 'inclinometer',
        by: 'A. Vale',
        on: '2026-05-01',
        reason: null,
        beyond: true,
        ...{ awayM: 0, elsewhere: false },
      } as const),
    };
    const stop = 'A slide, 2025-05-01: nobody has been here since.';
    const words = textsOf(
      planPageSvg(
        planSheetOf(
          { stops: [stop] },
          {
            field: [
              {
                ...row,
                computedRange: [31.8, 35.1],
                stretchM: [11, 16],
                quantity: 'angleDeg',
                measured: 47,
                used: 'measured',
                why: null,
              },
              {
                ...row,
                computedRange: null,
                stretchM: null,
                quantity: 'dropM',
                measured: 5,
                used: 'computed',
                why: 'one reading',
              },
            ],
            warnings: [{ code: 'changed-since-survey', severity: 'stop', text: stop }],
          },
        ),
        letter,
      ),
    );
    expect(words).toContain('Measured: angle of the slope over 5 m 47° (computed 33.4°), A. Vale, 2026-05-01.');
    expect(words.split('nobody has been here since').length).toBe(2);
  });

  it('tells what stops before the sentence, and who looked and when', () => {
    const check = {
      by: 'captain, B shift',
      role: null,
      on: '2025-03-19',
      method: 'walked',
      conditions: 'dry',
      readings: 2,
    } as const;
    const words = textsOf(
      planPageSvg(
        planSheetOf({ stops: ['A slide, 2025-05-01: nobody has been here since.'], check, overdueSince: '2026-03-19' }),
        letter,
      ),
    );
    expect(words.indexOf('A slide, 2025-05-01')).toBeLessThan(words.indexOf('First five minutes'));
    expect(words).toContain('Walked by captain, B shift on 2025-03-19, dry, 2 readings in the book.');
    expect(words).toContain('Due again since 2026-03-19.');
    const desk = textsOf(planPageSvg(planSheetOf({ check: { ...check, method: 'desk' } }), letter));
    expect(desk).toContain('Not field-verified; looked over at a desk');
  });

  it('names the leading way, but not where the place is planned as high', () => {
    const ways = (['carry', 'raise'] as const).map((kind, i) => ({
      ...{ kind, ropeM: null, people: { count: 8, atMin: 0 }, minutes: { from: 30, to: 45 }, meets: 'the road' },
      ...{ bearers: 6, reachedBy: 'vehicle' as const, allowed: true, rank: i + 1, why: [] },
    }));
    const words = textsOf(planPageSvg(planSheetOf({}, { ways }), letter));
    expect(words).toContain('Leading way: carry, 8 people, 30 to 45 min');
    const high = highSheet();
    const study = { ...high.study, ways };
    expect(textsOf(planPageSvg({ ...high, study }, letter))).not.toContain('carry');
  });

  it('never uses the words that no output may use', () => {
    for (const sheet of [planSheetOf(), highSheet()]) {
      const words = textsOf(planPageSvg(sheet, letter)) + textsOf(cardPageSvg(sheet, letter));
      expect(words).not.toMatch(/\bsafe\b|adequate|approved/i);
    }
  });

  it('keeps hostile text inert in every field and stands alone', () => {
    for (const text of hostileTexts) {
      const sheet = planSheetOf(
        {
          site: { id: 's', name: text, notes: text.repeat(40), radio: text },
          cardLines: [{ heading: text, order: 1, text }],
          district: text,
          mile: text,
          stops: [text],
          check: { by: text, role: text, on: text, method: 'walked', conditions: text, readings: 1 },
          places: [
            {
              ...{ kind: 'staging', name: text, at: { lon: -128, lat: 44 }, vehicles: 2, on: null, notes: text },
              ...{ lengthM: 1, widthM: 1, hazards: text },
            },
          ],
          roads: [{ name: text, line: [-128.01, 44, -127.99, 44] }],
          photos: [{ data: `data:image/png;base64,"${text}`, widthPx: 10, heightPx: 10, caption: text }],
          address: text,
        },
        { call: [{ who: text, why: text, agency: text, phone: text, radio: text }], sentence: text },
      );
      const html = planSheetHtml(sheet, letter);
      for (const svg of [planPageSvg(sheet, letter), cardPageSvg(sheet, letter)]) {
        const root = readSvg(svg);
        for (const name of ['script', 'image', 'foreignObject', 'a', 'style', 'img'])
          expect(elementsOf(root, name)).toHaveLength(0);
      }
      expect(html.match(/<svg xmlns/g)).toHaveLength(3);
      expect(html).not.toMatch(/<script|<img|\son\w+="|[\u202A-\u202E\u2066-\u2069]/);
      const place = /<a href="geo:-?[\d.]+,-?[\d.]+"/g;
      expect(html.match(place)).toHaveLength(1);
      expect(html.replaceAll('http://www.w3.org/2000/svg', '').replace(place, '')).not.toMatch(
        /(?:href|src)="|url\(|@import/,
      );
    }
  });

  it('stays on its page whatever the book holds', () => {
    const long = 'word '.repeat(2000);
    const call = Array.from({ length: 60 }, (_, i) => ({
      who: `Team ${i}`,
      why: 'x',
      agency: 'Y',
      phone: '555-0100',
      radio: null,
    }));
    const warnings = Array.from({ length: 40 }, (_, i) => ({
      code: `c-${i}`,
      severity: 'check' as const,
      text: `Look at thing ${i}.`,
    }));
    const sheet = planSheetOf({ site: { id: 's', name: long, notes: long, radio: null } }, { call, warnings });
    const svg = planPageSvg(sheet, letter);
    const words = textsOf(svg);
    expect(words).toMatch(/and \d+ more in the book/);
    expect(words).toMatch(/and \d+ more on the back/);
    const lowest = Math.max(...elementsOf(readSvg(svg), 'text').map((each) => Number(each.getAttribute('y'))));
    expect(lowest).toBeLessThan((279.4 - 9.5) * (96 / 25.4));
  });
});

describe('surveyed places', () => {
  const zone = { kind: 'landing zone' as const, vehicles: null, on: null, notes: '', hazards: '', name: 'Far Field' };
  const at = (north: number, east: number) => ({ lon: -128 + east / 80_000, lat: 44 + north / 111_000 });
  const drawnIn = (svg: string, mark: string): number => ofClass(readSvg(svg), 'g', mark).length;

  it('stand on the drawing where it reaches, else on the small map, with their size', () => {
    const near = planPageSvg(planSheetOf({ places: [{ ...zone, at: at(-20, 8), lengthM: 46, widthM: 34 }] }), letter);
    expect(drawnIn(near, 'mark-landing-zone')).toBe(1);
    expect(drawnIn(near, 'place-landing-zone')).toBe(0);
    expect(textsOf(near)).toContain('landing zone 150 × 111 ft too small by night');
    const far = planPageSvg(
      planSheetOf({ places: [{ ...zone, at: at(60, 500), lengthM: null, widthM: null }] }),
      letter,
    );
    expect(drawnIn(far, 'mark-landing-zone')).toBe(0);
    expect(drawnIn(far, 'place-landing-zone')).toBe(1);
    const away = planPageSvg(planSheetOf({ places: [{ ...zone, at: at(0, 9000), lengthM: 46, widthM: 34 }] }), letter);
    expect(drawnIn(away, 'mark-landing-zone') + drawnIn(away, 'place-landing-zone')).toBe(0);
    expect(textsOf(away)).toMatch(/Landing zone Far Field, 5\.6 mi east/);
  });
});

describe('check card', () => {
  it('prints the book’s lines in their order, two boxes a line, and nothing of the shipped card', () => {
    const cardLines = [
      { heading: 'Second', order: 2, text: 'look at that' },
      { heading: 'First', order: 1, text: 'look at this' },
      { heading: 'Commands', order: 3, text: 'Halt: everybody stands' },
    ];
    const svg = cardPageSvg(planSheetOf({ cardLines }), letter);
    const words = textsOf(svg);
    expect(words.indexOf('look at this')).toBeGreaterThan(0);
    expect(words.indexOf('look at this')).toBeLessThan(words.indexOf('look at that'));
    expect(words).not.toContain('Litter rails');
    const boxes = elementsOf(readSvg(svg), 'rect').filter((each) => each.getAttribute('width') === '14');
    expect(boxes).toHaveLength(4);
  });

  it('says what of a long card had no room, and keeps the lines to sign', () => {
    const cardLines = Array.from({ length: 12 }, (_, i) =>
      Array.from({ length: 6 }, (_line, k) => ({ heading: `Part ${i}`, order: 10 * i + k, text: `look at ${i}.${k}` })),
    ).flat();
    const svg = cardPageSvg(planSheetOf({ cardLines }), letter);
    const words = textsOf(svg);
    expect(words).toMatch(/and \d+ more in the book’s card: read them too/);
    expect(words).toContain('second checker, time');
    const lowest = Math.max(...elementsOf(readSvg(svg), 'text').map((each) => Number(each.getAttribute('y'))));
    expect(lowest).toBeLessThan((279.4 - 9.5) * (96 / 25.4));
  });

  it('shows the photo as large as the card leaves room, else says that there is one', () => {
    const photo = { data: 'data:image/png;base64,AAAA', widthPx: 400, heightPx: 300, caption: 'the lip' };
    const lines = (count: number) =>
      Array.from({ length: count }, (_, i) => ({ heading: 'Commands', order: i, text: `Word ${i}: what it means` }));
    const shown = (count: number) => {
      const svg = cardPageSvg(planSheetOf({ photos: [photo], cardLines: lines(count) }), letter);
      const [image] = elementsOf(readSvg(svg), 'image');
      return { height: image ? Number(image.getAttribute('height')) : 0, words: textsOf(svg) };
    };
    const heights = [5, 24, 40].map((count) => shown(count).height);
    expect(heights[0]).toBeCloseTo(130, 6);
    expect(heights[1]).toBeLessThan(130);
    expect(heights[1]).toBeGreaterThan(44);
    expect(heights[2]).toBe(0);
    expect(shown(5).words).toContain('the lip');
  });

  it('ships the order from load to anchors, commands, bridle, tie-in and edge lift', () => {
    expect([...new Set(defaultCardLines.map(({ heading }) => heading))]).toEqual([
      'Load',
      'Lines',
      'Edge',
      'Haul',
      'Anchors',
      'Commands',
      'Litter bridle',
      'Tie-in',
      'Edge lift',
    ]);
    const words = textsOf(cardPageSvg(planSheetOf(), letter));
    for (const { heading } of defaultCardLines) expect(words).toContain(heading);
    expect(words).toContain('Channel: Command 2.');
  });
});

describe('book of sheets', () => {
  it('puts sites in road order behind an index that names their pages', () => {
    const far = planSheetOf({ alongM: 900, site: { id: 'b', name: 'Far End', notes: '', radio: null } });
    const near = planSheetOf({ alongM: 100, site: { id: 'a', name: 'Near End', notes: '', radio: null } });
    const html = sheetBookHtml([far, near], letter);
    const pages = [...html.matchAll(/<section class="page">(.*?)<\/section>/gs)].map(([, page]) => page!);
    expect(pages).toHaveLength(5);
    const index = textsOf(pages[0]!);
    expect(index).toMatch(/2 Near End .* 4 Far End/);
    expect(textsOf(pages[1]!)).toContain('Near End');
    expect(textsOf(pages[3]!)).toContain('Far End');
    expect(html).toMatch(/<ol><li><a href="#sheet-1">Near End<\/a>.*<a href="#sheet-2">Far End<\/a>/);
    expect(html.match(/<section class="phone" id="sheet-\d">/g)).toHaveLength(2);
  });
});

describe('a sheet on a phone', () => {
  it('says in one column what the page says, the card after it, numbers and position to tap', () => {
    const call = [
      { who: 'Rope team', why: 'rope does not reach', agency: null, phone: '(555) 010-0190', radio: null },
      { who: 'Roads', why: 'a lane is closed', agency: null, phone: 'ask dispatch', radio: null },
    ];
    const sheet = planSheetOf({}, { call });
    const svg = phonePageSvg(sheet, 'us');
    const root = readSvg(svg);
    const words = textsOf(svg);
    for (const part of [
      'North Shelf',
      CAUTION.slice(0, 40),
      'First five minutes',
      'The raise',
      'People and minutes',
      'Forces',
      'Whom to call',
      'Reach it, hazards',
      'Check card, North Shelf',
      'Not field-verified.',
      'US National Grid 9T',
      ...defaultCardLines.map(({ heading }) => heading),
    ])
      expect(words).toContain(part);
    expect(elementsOf(root, 'a').map((a) => a.getAttribute('href'))).toEqual([
      expect.stringMatching(/^geo:4[34]\.\d{5},-1\d\d\.\d{5}$/),
      'tel:5550100190',
    ]);
    expect(svg).not.toMatch(/NaN|undefined|Infinity/);
    const [, , width] = root.getAttribute('viewBox')!.split(' ').map(Number);
    expect(width).toBeLessThanOrEqual(300);
  });

  it('has the stop line first at a high place, no minutes, no team size, nothing that is called only on the back', () => {
    const words = textsOf(phonePageSvg(highSheet(), 'us'));
    expect(words.indexOf('Technical rope team needed')).toBeLessThan(words.indexOf('First crew'));
    expect(words.indexOf('First crew')).toBeLessThan(words.indexOf('For the technical team'));
    expect(words).not.toMatch(/\d min\b|People planned|to raise|on the back/);
  });
});
