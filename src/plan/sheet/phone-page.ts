import { formatDegreesMinutes, formatUsng } from '../../geo/index.ts';
import { CAUTION } from '../../study/index.ts';
import type { UnitSystem } from '../../units/index.ts';
import { element, num } from '../svg.ts';
import { callBlock } from './call-block.ts';
import { cardBlocks } from './card-blocks.ts';
import { classRing } from './class-ring.ts';
import { firstBlock } from './first-block.ts';
import { type Draw, linked, paragraph, ruleAcross, stack, tapped } from './flow.ts';
import { sourceWords } from './foot-block.ts';
import { forcesBlock, raiseBlock, ropeBlock } from './haul-blocks.ts';
import { sentenceBlock } from './head-block.ts';
import { locatorBlock } from './locator.ts';
import { peopleBlock } from './people-block.ts';
import { photoRow } from './photo-row.ts';
import { qrWords } from './qr.ts';
import { reachBlock } from './reach-block.ts';
import { sheetDrawing } from './sheet-drawing.ts';
import { sheetPens as pens } from './sheet-pens.ts';
import type { PlanSheet } from './sheet-types.ts';
import { teamBox } from './team-box.ts';

/** Drawn to fill a phone's width: a letter of the sheet comes out at 13 px and more on 390. */
const WIDTH = 300;
const MARGIN = 7;
/** The drawing is laid out on a wider field and made to fit, so that its labels have room. */
const DRAWN = { width: 368, high: 530, short: 400 };
const GAP = 13;
const RING = 34;
const LOCATOR = 110;

/** A plan sheet for a phone, as SVG of one column that fills the width it is given: the same pieces in the order of their use. */
export function phonePageSvg(sheet: PlanSheet, units: UnitSystem): string {
  const { study } = sheet;
  const high = study.angle?.planAs === 'high';
  const reach = reachBlock(sheet, units, Number.POSITIVE_INFINITY);
  const card = cardBlocks(sheet, units);
  const drawing = drawn(sheet, units);
  const first = [firstBlock(study, units), ...(high ? [callBlock(sheet), reach] : [])];
  const haul = high
    ? [teamBox(study, units, true)]
    : [
        raiseBlock(study, units, false),
        ropeBlock(study, units),
        peopleBlock(study),
        forcesBlock(study, units),
        callBlock(sheet),
        reach,
      ];
  const page = stack(
    [
      head(sheet),
      sentenceBlock(sheet),
      paragraph(CAUTION, pens.print),
      ...first,
      drawing,
      ...haul,
      locatorBlock(sheet, units, LOCATOR),
      photoRow(sheet.photos),
      paragraph(`Check card, ${sheet.site.name}`, pens.siteName),
      ...card.ticks,
      ...card.words,
      ruleAcross,
      paragraph(sourceWords(sheet, units), pens.print),
    ],
    GAP,
  )({ x: MARGIN, y: MARGIN, width: WIDTH - 2 * MARGIN });
  const height = page.height + 2 * MARGIN;
  return element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${WIDTH} ${num(height)}`,
      class: 'phone-sheet',
      'aria-label': `Plan sheet, ${sheet.site.name}`,
    },
    element('rect', { fill: '#ffffff', width: WIDTH, height }) + page.svg,
  );
}

/** Name, road and side, then the position in its forms: a tap opens the phone's own map. */
const head = ({ study, site, mile, district }: PlanSheet): Draw => {
  const { road, sideWords } = study.site;
  const where = [road.name ?? 'Unnamed road', ...(mile === null ? [] : [`mile ${mile}`])].join(', ');
  const name: Draw = ({ x, y, width }) => {
    const words = stack(
      [
        paragraph(site.name, pens.siteName),
        paragraph(where, pens.where),
        paragraph(sideWords, pens.where),
        paragraph([district, ...(site.radio ? [`radio ${site.radio}`] : [])].join(', '), pens.where),
      ],
      1,
    )({ x: x + RING + 10, y, width: width - RING - 10 });
    return { svg: classRing(study, x, y + 4, RING) + words.svg, height: Math.max(RING + 16, words.height) };
  };
  const usng = formatUsng(study.site);
  const place = stack(
    [
      paragraph(formatDegreesMinutes(study.site), pens.place),
      ...(usng === null ? [] : [paragraph(`US National Grid ${usng}`, pens.place)]),
    ],
    4,
  );
  return stack([name, linked(qrWords(null, site.id, study.site), tapped(place))], 8);
};

/** Plan view over profile, or the roads around where no bench was found. */
const drawn =
  (sheet: PlanSheet, units: UnitSystem): Draw =>
  ({ x, y, width }) => {
    const { study } = sheet;
    if (!study.bench) return { svg: '', height: 0 };
    const tall = study.descent ? DRAWN.high : DRAWN.short;
    const height = (tall * width) / DRAWN.width;
    const box = { x: 1, y: 1, width: DRAWN.width - 2, height: tall - 2 };
    const { svg: inside } = sheetDrawing(sheet, box, units, { onPaper: false });
    const view = { x, y, width, height, viewBox: `0 0 ${DRAWN.width} ${tall}` };
    return { svg: element('svg', view, inside), height };
  };
