import { formatDegreesMinutes, formatUsng } from '../../geo/index.ts';
import { CAUTION } from '../../study/index.ts';
import { text } from '../svg.ts';
import { type Draw, heightOf, paragraph, ruleAcross, stack } from './flow.ts';
import { checkBar } from './foot-block.ts';
import { linesOf } from './measure.ts';
import { pageSvg } from './page-svg.ts';
import { papers } from './paper.ts';
import { sheetPens as pens, type TextPen } from './sheet-pens.ts';
import type { PlanSheet, SheetOptions } from './sheet-types.ts';

/** Index pages of a book of sheets: page, site, place on the road, plan as, position and last look, in the order given. */
export function indexPages(sheets: readonly PlanSheet[], { paper: name }: SheetOptions): string[] {
  const paper = papers[name];
  const [x, width] = [paper.margin, paper.width - 2 * paper.margin];
  const foot = stack([ruleAcross, paragraph(CAUTION, pens.print), checkBar], 3);
  const bottom = paper.height - paper.margin - heightOf(foot, width);
  const top = paper.margin + 52;
  // The pages of the index come first, so their number shifts every page.
  const perPage = Math.max(1, Math.floor((bottom - top - 10) / ROW));
  const count = Math.max(1, Math.ceil(sheets.length / perPage));
  return Array.from({ length: count }, (_, page) => {
    const shown = sheets.slice(page * perPage, (page + 1) * perPage);
    const head = headOf(sheets, page, count)({ x, y: paper.margin, width });
    const rows = shown.map((sheet, i) => {
      const number = count + 1 + 2 * (page * perPage + i);
      return indexRow(sheet, number)({ x, y: top + i * ROW, width }).svg;
    });
    const svg = head.svg + rows.join('') + foot({ x, y: bottom, width }).svg;
    return pageSvg(paper, `Index of plan sheets, page ${page + 1} of ${count}`, 'sheet-index', svg);
  });
}

const ROW = 31;

const headOf =
  (sheets: readonly PlanSheet[], page: number, count: number): Draw =>
  (place) => {
    const district = sheets[0]?.district ?? '';
    const name = `${district === '' ? 'Plan sheets' : `${district}: plan sheets`}${count > 1 ? `, ${page + 1} of ${count}` : ''}`;
    const [title = ''] = linesOf(name, place.width, pens.cardName);
    const head = text(place.x, place.y + 22, title, pens.cardName);
    const rule = ruleAcross({ ...place, y: place.y + 44 });
    return {
      svg:
        head +
        text(
          place.x,
          place.y + 38,
          `${sheets.length} sites in road order, each with its check card behind it`,
          pens.text,
        ) +
        rule.svg,
      height: 46,
    };
  };

const indexRow =
  (sheet: PlanSheet, number: number): Draw =>
  ({ x, y, width }) => {
    const { study, site, mile } = sheet;
    const { road } = study.site;
    const right = x + width;
    const classX = x + 0.36 * width;
    const one = (words: string, most: number, pen: TextPen): string => {
      const [first = ''] = linesOf(words, most, pen);
      return first.length < words.trim().length ? `${first}…` : first;
    };
    const planAs = study.angle ? `plan as ${study.angle.planAs}` : 'no class';
    const where = `${road.name ?? 'Unnamed road'}${mile === null ? '' : `, mile ${mile}`}, ${study.site.sideWords}`;
    const end = { 'text-anchor': 'end' } as const;
    return {
      svg:
        text(x + 18, y + 12, String(number), { ...pens.numberStrong, ...end }) +
        text(x + 28, y + 12, one(site.name, classX - x - 40, pens.cardStrong), pens.cardStrong) +
        text(classX, y + 12, planAs, pens.cardText) +
        text(classX + 96, y + 12, one(lookWords(sheet), right - classX - 240, pens.text), pens.text) +
        text(right, y + 12, formatDegreesMinutes(study.site), { ...pens.number, ...end }) +
        text(x + 28, y + 25, one(where, width - 180, pens.text), pens.text) +
        text(right, y + 25, formatUsng(study.site) ?? '', { ...pens.number, ...end }),
      height: ROW,
    };
  };

/** When somebody was there last, short; what stands on the sheet in full. */
const lookWords = ({ check, overdueSince }: PlanSheet): string =>
  !check || check.method === 'desk'
    ? 'not field-verified'
    : `${check.method} ${check.on}${overdueSince === null ? '' : ', due again'}`;
