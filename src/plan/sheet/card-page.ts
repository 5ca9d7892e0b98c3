import { formatLength, type UnitSystem } from '../../units/index.ts';
import { nameOf } from '../layout-label-texts.ts';
import { element, num, text } from '../svg.ts';
import { defaultCardLines, PAIR_HEADINGS, WRITTEN_HEADINGS } from './default-card.ts';
import { boxed, type Draw, fitting, heightOf, lineOf, paragraph, ruleAcross, stack } from './flow.ts';
import { footBlock } from './foot-block.ts';
import { linesOf } from './measure.ts';
import { pageSvg } from './page-svg.ts';
import { papers } from './paper.ts';
import { photoRow } from './photo-row.ts';
import { reachRows } from './reach-block.ts';
import { sheetPens as pens } from './sheet-pens.ts';
import type { PlanSheet, SheetCardLine, SheetOptions } from './sheet-types.ts';

const GUTTER = 26;
const LEFT_SHARE = 0.62;
/** Room that lines are given for writing. */
const WRITING = 20;

/** The check card on a sheet's back as SVG, one page; its text is the book's. */
export function cardPageSvg(sheet: PlanSheet, { paper: name, units }: SheetOptions): string {
  const paper = papers[name];
  const [x, width] = [paper.margin, paper.width - 2 * paper.margin];
  const lines = sheet.cardLines.length > 0 ? sheet.cardLines : defaultCardLines;
  const groups = grouped(lines);
  const foot = footBlock(sheet, units);
  const footTop = paper.height - paper.margin - heightOf(foot, width);
  const top = stack([cardHead(sheet), ruleAcross], 5)({ x, y: paper.margin, width });
  const middleTop = paper.margin + top.height + 8;
  const leftWidth = (width - GUTTER) * LEFT_SHARE;
  const rightX = x + leftWidth + GUTTER;
  const rightWidth = width - leftWidth - GUTTER;
  const foundTop = footTop - 66;
  const most = foundTop - middleTop - 10;
  const isRight = ({ heading }: Group): boolean => isOf(heading, PAIR_HEADINGS) || isOf(heading, WRITTEN_HEADINGS);
  const ticks = stack([...groups.filter((group) => !isRight(group)).map(checkGroup), signed], 10);
  const rest = most - heightOf(ticks, leftWidth) - 14;
  const here = fitting(reachRows(sheet, units, true), 1.5, rest - 24, 'on the front or in the study');
  const left =
    rest > 60
      ? stack([ticks, stack([groupHeading('To know and to check here'), here], 3)], 12)
      : fitting([ticks], 0, most);
  const right = fitting(
    [...groups.filter(isRight).map(rightGroup), boxed(ruleBox(sheet, units)), photoRow(sheet.photos)],
    12,
    most,
  );
  const svg = [
    top.svg,
    left({ x, y: middleTop, width: leftWidth }).svg,
    right({ x: rightX, y: middleTop, width: rightWidth }).svg,
    foundBlock({ x, y: foundTop, width }).svg,
    foot({ x, y: footTop, width }).svg,
  ];
  return pageSvg(paper, `Check card, ${sheet.site.name}`, 'check-card', svg.join(''));
}

interface Group {
  readonly heading: string;
  readonly lines: readonly string[];
}

const isOf = (heading: string, list: readonly string[]): boolean =>
  list.some((each) => each.toLowerCase() === heading.trim().toLowerCase());

/** Lines in their order, under the heading where it first stands. */
function grouped(lines: readonly SheetCardLine[]): Group[] {
  const groups = new Map<string, string[]>();
  for (const { heading, text: words } of [...lines].sort((a, b) => a.order - b.order)) {
    groups.set(heading, [...(groups.get(heading) ?? []), words]);
  }
  return [...groups].map(([heading, own]) => ({ heading, lines: own }));
}

const cardHead =
  ({ site, study }: PlanSheet): Draw =>
  ({ x, y, width }) => {
    const note = 'two people, aloud, from the load to the anchors, before anyone goes over';
    const [name = ''] = linesOf(`Check card, ${site.name}`, width - 20, pens.cardName);
    const high = study.angle?.planAs === 'high';
    const under = high ? `For the technical team. ${note}` : note;
    return { svg: text(x, y + 22, name, pens.cardName) + text(x, y + 40, under, pens.cardText), height: 44 };
  };

/** A heading with lines to tick, two boxes a line: one for each who checks. */
const checkGroup = ({ heading, lines }: Group): Draw =>
  stack([groupHeading(heading), ...lines.map((words) => tickLine(words))], 4);

const groupHeading =
  (words: string): Draw =>
  (place) =>
    stack([paragraph(words, pens.blockHeading), ruleAcross], 1.5)(place);

const tickLine =
  (words: string): Draw =>
  ({ x, y, width }) => {
    const block = paragraph(words, pens.cardText)({ x: x + 42, y: y + 2, width: width - 42 });
    const boxes = [0, 19].map((dx) => element('rect', { ...lineOf(1), x: x + dx, y: y + 1.5, width: 14, height: 14 }));
    const height = Math.max(19, block.height + 4);
    const rule = element('path', { ...lineOf(0.4), d: `M${num(x)} ${num(y + height + 1)}h${num(width)}` });
    return { svg: boxes.join('') + block.svg + rule, height: height + 1.5 };
  };

const signed: Draw = ({ x, y, width }) => {
  const half = width / 2 - 12;
  const one = (at: number, words: string): string =>
    text(at, y + 12, words, pens.textNote) +
    element('path', { ...lineOf(0.8), d: `M${num(at)} ${num(y + 34)}h${num(half)}` });
  return { svg: one(x, 'first checker, time') + one(x + half + 24, 'second checker, time'), height: 36 };
};

function rightGroup({ heading, lines }: Group): Draw {
  if (isOf(heading, WRITTEN_HEADINGS)) {
    const prompts = lines.map((words) => paragraph(words, pens.textNote));
    return stack([paragraph(heading, pens.cardStrong), ...prompts, writing, writing], 2);
  }
  return stack([groupHeading(heading), ...lines.map(pair)], 4);
}

/** "Word: meaning" in two columns; a line without a colon runs across. */
const pair =
  (words: string): Draw =>
  ({ x, y, width }) => {
    const at = words.indexOf(': ');
    const rule = (height: number): string =>
      element('path', { ...lineOf(0.4), d: `M${num(x)} ${num(y + height + 1)}h${num(width)}` });
    if (at < 0) {
      const block = paragraph(words, pens.cardText)({ x, y, width });
      return { svg: block.svg + rule(block.height), height: block.height + 1.5 };
    }
    const split = width * 0.36;
    const left = paragraph(words.slice(0, at), pens.cardStrong)({ x, y, width: split - 6 });
    const right = paragraph(words.slice(at + 2), pens.cardText)({ x: x + split, y, width: width - split });
    const height = Math.max(left.height, right.height);
    return { svg: left.svg + right.svg + rule(height), height: height + 1.5 };
  };

const writing: Draw = ({ x, y, width }) => ({
  svg: element('path', { ...lineOf(0.6), d: `M${num(x)} ${num(y + WRITING)}h${num(width)}` }),
  height: WRITING + 2,
});

/** What holds at this site, from its leading layout; a place planned as high names no people. */
function ruleBox({ study, site }: PlanSheet, units: UnitSystem): Draw {
  const [layout] = study.layouts;
  const high = study.angle?.planAs === 'high';
  const up = (m: number): string => formatLength(m, units, 'up');
  const rope = layout
    ? `Here: ${layout.kind} haul, ${layout.mechanicalAdvantage}, throw ${formatLength(layout.throwM, units, 'down')}; main ${up(layout.ropeM.main)}, belay ${up(layout.ropeM.belay)}${layout.ropeM.haul === null ? '' : `, haul line ${up(layout.ropeM.haul)}`}; anchor ${nameOf(study, layout.anchor)}${layout.turn ? `, turn ${nameOf(study, layout.turn)}` : ''}, belay on ${nameOf(study, layout.lines.belay.anchor)}.`
    : '';
  const people =
    layout && !high
      ? `People planned: ${layout.people.leastLower.count} to lower, ${layout.people.leastRaise.count} to raise.`
      : '';
  const radio = site.radio ? `Channel: ${site.radio}.` : 'Channel:';
  const words = [
    'One open box stops the start.',
    rope,
    people,
    'On ice no apparatus is an anchor. Never haul with a vehicle or winch.',
  ];
  return stack(
    [
      paragraph(words.filter((each) => each !== '').join(' '), pens.cardText, 'One open box stops the start.'),
      paragraph(radio, pens.cardStrong),
    ],
    5,
  );
}

const foundBlock: Draw = stack(
  [paragraph('Found different from the plan sheet', pens.blockHeading), writing, writing],
  1,
);
