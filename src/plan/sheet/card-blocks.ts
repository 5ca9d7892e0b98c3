import type { Study, StudyLayout } from '../../study/index.ts';
import { formatLength, lengthUnit, type UnitSystem } from '../../units/index.ts';
import { nameOf } from '../layout-label-texts.ts';
import { element, num, text } from '../svg.ts';
import { defaultCardLines, PAIR_HEADINGS, WRITTEN_HEADINGS } from './default-card.ts';
import { boxed, type Draw, lineOf, paragraph, ruleAcross, stack } from './flow.ts';
import { ropeNeed } from './haul-blocks.ts';
import { sheetPens as pens } from './sheet-pens.ts';
import type { PlanSheet, SheetCardLine } from './sheet-types.ts';

/** Room that lines are given for writing. */
const WRITING = 20;

/** The pieces of a check card: what two people tick and sign, what words mean and a district writes in, what holds here. */
export function cardBlocks(sheet: PlanSheet, units: UnitSystem): { ticks: Draw[]; signed: Draw; words: Draw[] } {
  const groups = grouped(sheet.cardLines.length > 0 ? sheet.cardLines : defaultCardLines);
  const isWords = ({ heading }: Group): boolean => isOf(heading, PAIR_HEADINGS) || isOf(heading, WRITTEN_HEADINGS);
  return {
    ticks: groups.filter((group) => !isWords(group)).map(checkGroup),
    signed,
    words: [...groups.filter(isWords).map(rightGroup), boxed(ruleBox(sheet, units))],
  };
}

/** Two lines under a question, for writing. */
export const written = (words: string): Draw => stack([paragraph(words, pens.blockHeading), writing, writing], 1);

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

/** A heading with lines to tick, two boxes a line: one for each who checks. */
const checkGroup = ({ heading, lines }: Group): Draw =>
  stack([groupHeading(heading), ...lines.map((words) => tickLine(words))], 4);

/** A heading of the card over its rule. */
export const groupHeading =
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
  const rope = layout ? ropeWords(study, layout, units) : '';
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

function ropeWords(study: Study, layout: StudyLayout, units: UnitSystem): string {
  const { kind, mechanicalAdvantage, throwM, ropeM, turn, anchor, lines } = layout;
  const need = ropeNeed(study, layout, units);
  const rope = (m: number): string => `${need(m)} ${lengthUnit(units)}`;
  const haulLine = ropeM.haul === null ? '' : `, haul line ${rope(ropeM.haul)}`;
  const turnAt = turn ? `, turn ${nameOf(study, turn)}` : '';
  return `Here: ${kind} haul, ${mechanicalAdvantage}, throw ${formatLength(throwM, units, 'down')}; main ${rope(ropeM.main)}, belay ${rope(ropeM.belay)}${haulLine}; anchor ${nameOf(study, anchor)}${turnAt}, belay on ${nameOf(study, lines.belay.anchor)}.`;
}
