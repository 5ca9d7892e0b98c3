import type { UnitSystem } from '../../units/index.ts';
import { callBlock } from './call-block.ts';
import { columns } from './columns.ts';
import { firstBlock } from './first-block.ts';
import { type Draw, heightOf, ruleAcross, stack } from './flow.ts';
import { footBlock } from './foot-block.ts';
import { forcesBlock, raiseBlock, ropeBlock } from './haul-blocks.ts';
import { headBlock, sentenceBlock } from './head-block.ts';
import { locatorBlock, locatorInset } from './locator.ts';
import { pageSvg } from './page-svg.ts';
import { papers } from './paper.ts';
import { peopleBlock } from './people-block.ts';
import { reachBlock } from './reach-block.ts';
import { sheetDrawing } from './sheet-drawing.ts';
import type { PlanSheet, SheetOptions } from './sheet-types.ts';
import { teamBox } from './team-box.ts';

/** Width of the drawing; what is left of the page is the column beside it. */
const DRAWING = 531;
const GUTTER = 13;
/** The drawing gets no less height than this; what stands under it is cut for it. */
const LEAST_DRAWING = 520;
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
  const drawn = study.bench !== null;
  // The roads around stand in a corner of the plan view; only where none is free do they take room from the columns.
  const place = (corner: boolean): { readonly inset: boolean; readonly svg: string } => {
    const { block: aside, located } = asideBlock(sheet, units, asideWidth, room, drawn && !corner);
    const under = underBlock(sheet, units, room - LEAST_DRAWING - GAP, !corner && !located);
    const rest = room - heightOf(under, DRAWING) - GAP;
    // Without a descent there is little to show.
    const height = study.descent ? rest : Math.min(rest, drawn ? 420 : 300);
    const box = { x, y: middleTop, width: DRAWING, height };
    const main = drawn
      ? sheetDrawing(sheet, box, units, corner ? { inset: locatorInset(sheet, units) } : {})
      : { svg: locatorBlock(sheet, units, height)(box).svg, inset: true };
    const svg = [
      main.svg,
      under({ x, y: middleTop + height + GAP, width: DRAWING }).svg,
      aside({ x: x + DRAWING + GUTTER, y: middleTop, width: asideWidth }).svg,
    ];
    return { inset: main.inset, svg: svg.join('') };
  };
  const inPlan = place(true);
  const middle = inPlan.inset ? inPlan : place(false);
  const svg = [top.svg, middle.svg, foot({ x, y: footTop, width }).svg];
  return pageSvg(paper, `Plan sheet, ${sheet.site.name}. ${study.sentence}`, 'plan-sheet', svg.join(''));
}

/**
 * Beside the drawing, from top to foot: what the first crew does, the raise with its rope, whom to call, and where it is, if that
 * is asked for and still has room there.
 */
function asideBlock(
  sheet: PlanSheet,
  units: UnitSystem,
  width: number,
  room: number,
  withLocator: boolean,
): { block: Draw; located: boolean } {
  const { study } = sheet;
  const high = study.angle?.planAs === 'high';
  const first = firstBlock(study, units);
  const call = callBlock(sheet);
  const left = (draws: readonly Draw[]): number => room - heightOf(stack(draws, GAP), width) - GAP;
  const located = (draws: readonly Draw[]): { block: Draw; located: boolean } => {
    const rest = left(draws);
    const fits = withLocator && rest >= LOCATOR.least;
    const locator = fits ? [locatorBlock(sheet, units, Math.min(LOCATOR.most, rest))] : [];
    return { block: stack([...draws, ...locator], GAP), located: fits };
  };
  if (high) {
    const least = [first, call];
    const reach = reachBlock(sheet, units, Math.max(60, left(least) - (withLocator ? LOCATOR.least + GAP : 0)));
    return located([...least, reach]);
  }
  const rope = ropeBlock(study, units);
  const whole = [first, raiseBlock(study, units, false), rope, call];
  return located(left(whole) + GAP >= 0 ? whole : [first, raiseBlock(study, units, true), rope, call]);
}

/** Under the drawing, at most so high where that can be helped; with the locator where the column beside had no room for it. */
function underBlock(sheet: PlanSheet, units: UnitSystem, mostHeight: number, withLocator: boolean): Draw {
  const { study } = sheet;
  if (study.angle?.planAs === 'high') return teamBox(study, units);
  if (study.layouts.length === 0) return reachBlock(sheet, units, Math.max(mostHeight, 120));
  const [people, forces] = [peopleBlock(study), forcesBlock(study, units)];
  const peopleHeight = heightOf(people, DRAWING * 0.27 - GUTTER);
  const forcesHeight = heightOf(forces, DRAWING * 0.32 - GUTTER) + (withLocator ? LOCATOR.least + GAP : 0);
  const height = Math.max(mostHeight, peopleHeight, forcesHeight);
  const reach = reachBlock(sheet, units, height);
  const tallest = Math.max(peopleHeight, forcesHeight, heightOf(reach, DRAWING * 0.41 - GUTTER));
  const place = Math.min(LOCATOR.most, tallest - forcesHeight + LOCATOR.least);
  const numbers = withLocator ? stack([forces, locatorBlock(sheet, units, place)], GAP) : forces;
  return columns([people, numbers, reach], [0.27, 0.32, 0.41], GUTTER);
}
