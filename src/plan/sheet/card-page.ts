import { text } from '../svg.ts';
import { cardBlocks, groupHeading, written } from './card-blocks.ts';
import { type Draw, fitting, heightOf, ruleAcross, stack } from './flow.ts';
import { footBlock } from './foot-block.ts';
import { linesOf } from './measure.ts';
import { pageSvg } from './page-svg.ts';
import { papers } from './paper.ts';
import { photoRow } from './photo-row.ts';
import { reachRows } from './reach-block.ts';
import { sheetPens as pens } from './sheet-pens.ts';
import type { PlanSheet, SheetOptions } from './sheet-types.ts';

const GUTTER = 26;
const LEFT_SHARE = 0.62;

/** The check card on a sheet's back as SVG, one page; its text is the book's. */
export function cardPageSvg(sheet: PlanSheet, { paper: name, units }: SheetOptions): string {
  const paper = papers[name];
  const [x, width] = [paper.margin, paper.width - 2 * paper.margin];
  const card = cardBlocks(sheet, units);
  const foot = footBlock(sheet, units);
  const footTop = paper.height - paper.margin - heightOf(foot, width);
  const top = stack([cardHead(sheet), ruleAcross], 5)({ x, y: paper.margin, width });
  const middleTop = paper.margin + top.height + 8;
  const leftWidth = (width - GUTTER) * LEFT_SHARE;
  const rightX = x + leftWidth + GUTTER;
  const rightWidth = width - leftWidth - GUTTER;
  const foundTop = footTop - 66;
  const most = foundTop - middleTop - 10;
  const mostTicks = most - heightOf(card.signed, leftWidth) - 10;
  const ticks = stack([fitting(card.ticks, 10, mostTicks, 'in the book’s card: read them too'), card.signed], 10);
  const rest = most - heightOf(ticks, leftWidth) - 14;
  const here = fitting(reachRows(sheet, units, true), 1.5, rest - 24, 'on the front or in the study');
  const left = rest > 60 ? stack([ticks, stack([groupHeading('To know and to check here'), here], 3)], 12) : ticks;
  const photoRoom = most - heightOf(stack(card.words, 12), rightWidth) - 12;
  const right = fitting([...card.words, photoRow(sheet.photos, photoRoom)], 12, most);
  const svg = [
    top.svg,
    left({ x, y: middleTop, width: leftWidth }).svg,
    right({ x: rightX, y: middleTop, width: rightWidth }).svg,
    written('Found different from the plan sheet')({ x, y: foundTop, width }).svg,
    foot({ x, y: footTop, width }).svg,
  ];
  return pageSvg(paper, `Check card, ${sheet.site.name}`, 'check-card', svg.join(''));
}

const cardHead =
  ({ site, study }: PlanSheet): Draw =>
  ({ x, y, width }) => {
    const note = 'two people, aloud, from the load to the anchors, before anyone goes over.';
    const [name = ''] = linesOf(`Check card, ${site.name}`, width - 20, pens.cardName);
    const high = study.angle?.planAs === 'high';
    const under = high ? `For the technical team: ${note}` : `${note[0]!.toUpperCase()}${note.slice(1)}`;
    return { svg: text(x, y + 22, name, pens.cardName) + text(x, y + 40, under, pens.cardText), height: 44 };
  };
