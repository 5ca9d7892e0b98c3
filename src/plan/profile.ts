import type { Study } from '../study/index.ts';
import type { UnitSystem } from '../units/index.ts';
import { type PaletteName, palettes } from './palette.ts';
import { makePens } from './pens.ts';
import { profileDrawing } from './profile-drawing.ts';
import { fitProfile } from './profile-frame.ts';
import { scaleBars, scaleBarsBox } from './scale-bars.ts';
import { sheet } from './sheet.ts';
import { text } from './svg.ts';

export interface ProfileDrawing {
  readonly units: UnitSystem;
  /** Drawing size in units of the view box; 96 units are one inch on paper. */
  readonly width: number;
  readonly height: number;
  readonly palette?: PaletteName;
}

/**
 * The profile of a study as SVG text, at true scale: one scale for distance and height, whatever the frame. The class is
 * read at the small protractor on the governing stretch; the fan at the edge shows the rule.
 *
 * ```
 *   bench ──┐ fan
 *           ╲╲──── 0°
 *            ╲ ╲ protractor at the steepest stretch
 *             ╲___ end
 * ```
 */
export function profileSvg(study: Study, drawing: ProfileDrawing): string {
  const { width, height, units } = drawing;
  const pens = makePens(palettes[drawing.palette ?? 'light']);
  const page = { width, height, pens, name: 'profile-drawing' };
  if (!study.profile || !study.edge || !study.descent) {
    return sheet({ ...page, title: study.sentence }, text(24, 40, 'No profile: no drop edge here.', pens.word));
  }
  const frame = fitProfile(study, width, height, pens);
  frame.taken.push(scaleBarsBox({ x: width, y: 14 }));
  return sheet(
    { ...page, title: `True-scale profile. ${study.sentence}` },
    scaleBars({ x: width, y: 14, scale: frame.scale, units, pens }) + profileDrawing(study, frame, units),
  );
}
