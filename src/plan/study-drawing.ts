import type { Study } from '../study/index.ts';
import type { UnitSystem } from '../units/index.ts';
import { comparison } from './comparison.ts';
import { drawingPair } from './drawing-pair.ts';
import { measuredFaces } from './letter-widths.ts';
import { type PaletteName, palettes } from './palette.ts';
import { makePens } from './pens.ts';
import { sheet } from './sheet.ts';
import { shownLayouts } from './shown-layouts.ts';
import { studyFoot } from './study-foot.ts';
import { studyHead } from './study-head.ts';

export interface StudyDrawing {
  readonly units: UnitSystem;
  /** Width in units of the view box, 96 to the inch on paper; 960 where not given, at least 640. The height follows. */
  readonly width?: number;
  /** The layout to draw in full; the first by rank where not given. */
  readonly layoutId?: string | null;
  readonly palette?: PaletteName;
}

const MARGIN = 24;
const LEAST_WIDTH = 640;

/**
 * A whole study as one SVG text: the sentence, plan view and profile at one scale and on one x axis, the best turned and
 * straight haul compared to scale, what to check, the caution and the source. A place planned as high has its stop line
 * first and its layouts dashed, without minutes or team size. Every text of the study is made inert.
 */
export function studySvg(study: Study, drawing: StudyDrawing): string {
  const { units } = drawing;
  const width = Math.max(LEAST_WIDTH, drawing.width ?? 960);
  // A file goes to devices with other faces: the stop line must not run off it.
  const pens = makePens(palettes[drawing.palette ?? 'light'], measuredFaces);
  const layoutId = drawing.layoutId ?? null;
  const place = (y: number) => ({ x: MARGIN, y, width: width - 2 * MARGIN });
  const head = studyHead(study, place(MARGIN - 6), pens);
  let y = MARGIN + head.height + 4;
  const pair = drawingPair(study, shownLayouts(study, layoutId), place(y), units, pens);
  y += pair.height + 14;
  const compared = comparison(study, layoutId, { ...place(y), scale: pair.scale }, units, pens);
  y += compared.height + 10;
  const foot = studyFoot(study, place(y), units, pens);
  return sheet(
    { width, height: y + foot.height + 10, pens, name: 'study-drawing', title: study.sentence },
    head.svg + pair.svg + compared.svg + foot.svg,
  );
}
