import type { UnitSystem } from '../../units/index.ts';
import { callBlock } from './call-block.ts';
import { columns } from './columns.ts';
import { firstMinutes } from './first-minutes.ts';
import { boxed, type Draw, heightOf, item, paragraph, ruleAcross, stack } from './flow.ts';
import { footBlock } from './foot-block.ts';
import { forcesBlock, raiseBlock, ropeBlock } from './haul-blocks.ts';
import { headBlock, sentenceBlock } from './head-block.ts';
import { locatorBlock } from './locator.ts';
import { pageSvg } from './page-svg.ts';
import { papers } from './paper.ts';
import { peopleBlock } from './people-block.ts';
import { reachBlock } from './reach-block.ts';
import { sheetDrawing } from './sheet-drawing.ts';
import { sheetPens as pens } from './sheet-pens.ts';
import type { PlanSheet, SheetOptions } from './sheet-types.ts';
import { teamBox } from './team-box.ts';

/** Width of the drawing; what is left of the page is the column beside it. */
const DRAWING = 531;
const GUTTER = 13;
/** The drawing gets no less height than this; what stands under it is cut for it. */
const LEAST_DRAWING = 440;
const LOCATOR = { least: 54, most: 120 };
const GAP = 9;

/** The front of a plan sheet as SVG, one page: head and sentence, drawing and what is under it, the column beside both, foot. */
export function planPageSvg(sheet: PlanSheet, { paper: name, units }: SheetOptions): string {
  const paper = papers[name];
  const { study } = sheet;
  const [x, width] = [paper.margin, paper.width - 2 * paper.margin];
  const foot = footBlock(sheet, units);
  const footTop = paper.height - paper.margin - heightOf(foot, width);
  const top = stack([headBlock(sheet), ruleAcross, sentenceBlock(sheet), ruleAcross], 5)({ x, y: paper.margin, width });
  const middleTop = paper.margin + top.height + 7;
  const room = footTop - middleTop - 8;
  const asideWidth = width - DRAWING - GUTTER;
  const aside = asideBlock(sheet, units, asideWidth, room);
  const under = underBlock(sheet, units, room - LEAST_DRAWING - GAP);
  const drawn = study.bench !== null;
  const drawingHeight = drawn ? room - heightOf(under, DRAWING) - GAP : 300;
  const drawing = { x, y: middleTop, width: DRAWING, height: drawingHeight };
  const svg = [
    top.svg,
    drawn ? sheetDrawing(study, drawing, units) : locatorBlock(sheet, units, drawingHeight)(drawing).svg,
    under({ x, y: middleTop + drawingHeight + GAP, width: DRAWING }).svg,
    aside({ x: x + DRAWING + GUTTER, y: middleTop, width: asideWidth }).svg,
    foot({ x, y: footTop, width }).svg,
  ];
  return pageSvg(paper, `Plan sheet, ${sheet.site.name}. ${study.sentence}`, 'plan-sheet', svg.join(''));
}

/** Beside the drawing, from top to foot: what the first crew does, the raise with its rope, whom to call, where it is. */
function asideBlock(sheet: PlanSheet, units: UnitSystem, width: number, room: number): Draw {
  const { study } = sheet;
  const high = study.angle?.planAs === 'high';
  const first = boxed(
    stack(
      [
        paragraph(high ? 'First crew' : 'First five minutes', pens.boxHeading),
        ...firstMinutes(study, units).map((words, i) => item(String(i + 1), words)),
      ],
      2.5,
    ),
  );
  const call = callBlock(sheet);
  const left = (draws: readonly Draw[]): number => room - heightOf(stack(draws, GAP), width) - GAP;
  const locator = (rest: number): Draw[] =>
    study.bench && rest >= LOCATOR.least ? [locatorBlock(sheet, units, Math.min(LOCATOR.most, rest))] : [];
  if (high) {
    const least = [first, call];
    const reach = reachBlock(sheet, units, Math.max(60, left(least) - LOCATOR.least - GAP));
    const own = [...least, reach];
    return stack([...own, ...locator(left(own))], GAP);
  }
  const rope = ropeBlock(study, units);
  const whole = [first, raiseBlock(study, units, false), rope, call];
  const own = left(whole) + GAP >= 0 ? whole : [first, raiseBlock(study, units, true), rope, call];
  return stack([...own, ...locator(left(own))], GAP);
}

/** Under the drawing, at most so high where that can be helped. */
function underBlock(sheet: PlanSheet, units: UnitSystem, mostHeight: number): Draw {
  const { study } = sheet;
  if (study.angle?.planAs === 'high') return teamBox(study, units);
  if (study.layouts.length === 0) return reachBlock(sheet, units, Math.max(mostHeight, 120));
  const numbers = [peopleBlock(study), forcesBlock(study, units)];
  const least = Math.max(heightOf(numbers[0]!, DRAWING * 0.27), heightOf(numbers[1]!, DRAWING * 0.32));
  return columns([...numbers, reachBlock(sheet, units, Math.max(mostHeight, least))], [0.27, 0.32, 0.41], 14);
}
