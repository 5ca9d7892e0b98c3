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
const GUTTER = 12;
/** The drawing gets no less height than this; the columns under it are cut for it. */
const LEAST_DRAWING = 400;
const LEAST_COLUMNS = 96;
const LOCATOR = 92;

/** The front of a plan sheet as SVG, one page. */
export function planPageSvg(sheet: PlanSheet, { paper: name, units }: SheetOptions): string {
  const paper = papers[name];
  const { study } = sheet;
  const [x, width] = [paper.margin, paper.width - 2 * paper.margin];
  const foot = footBlock(sheet, units);
  const footTop = paper.height - paper.margin - heightOf(foot, width);
  const top = stack([headBlock(sheet), ruleAcross, sentenceBlock(sheet), ruleAcross], 5)({ x, y: paper.margin, width });
  const middleTop = paper.margin + top.height + 7;
  const room = footTop - middleTop - 8;
  const aside = asideBlock(sheet, units);
  const asideWidth = width - DRAWING - GUTTER;
  const asideHeight = heightOf(aside, asideWidth);
  const drawn = study.bench !== null;
  const least = Math.max(drawn ? LEAST_DRAWING : 0, asideHeight);
  const under = underBlock(sheet, units, Math.max(LEAST_COLUMNS, room - least - 8));
  const underHeight = heightOf(under, width);
  const drawing = { x, y: middleTop, width: DRAWING, height: room - underHeight - 8 };
  const svg = [
    top.svg,
    drawn ? sheetDrawing(study, drawing, units) : locatorBlock(sheet, units, 300)({ ...drawing }).svg,
    aside({ x: x + DRAWING + GUTTER, y: middleTop, width: asideWidth }).svg,
    under({ x, y: footTop - 8 - underHeight, width }).svg,
    foot({ x, y: footTop, width }).svg,
  ];
  return pageSvg(paper, `Plan sheet, ${sheet.site.name}. ${study.sentence}`, 'plan-sheet', svg.join(''));
}

/** Beside the drawing: what the first crew does, where it is, and the raise with its rope, or whom to call. */
function asideBlock(sheet: PlanSheet, units: UnitSystem): Draw {
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
  const locator = locatorBlock(sheet, units, LOCATOR);
  const rest = high ? [callBlock(sheet, 200)] : [raiseBlock(study, units), ropeBlock(study, units)];
  return stack([first, ...(study.bench ? [locator] : []), ...rest], 8);
}

/** Under the drawing, at most so high where that can be helped. */
function underBlock(sheet: PlanSheet, units: UnitSystem, mostHeight: number): Draw {
  const { study } = sheet;
  if (study.angle?.planAs === 'high') {
    const box = teamBox(study, units);
    const boxHeight = heightOf(box, papers.a4.width - 2 * papers.a4.margin);
    return stack([reachBlock(sheet, units, Math.max(LEAST_COLUMNS, mostHeight - boxHeight - 8)), box], 8);
  }
  return columns(
    [peopleBlock(study), forcesBlock(study, units), reachBlock(sheet, units, mostHeight), callBlock(sheet, mostHeight)],
    [0.23, 0.25, 0.3, 0.22],
    14,
  );
}
