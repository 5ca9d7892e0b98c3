import { studySvg } from '../../../plan/index.ts';
import type { Study } from '../../../study/index.ts';
import type { UnitSystem } from '../../../units/index.ts';

/** The study as SVG text in the tones of the screen. */
export const drawStudy = (study: Study, units: UnitSystem, light: 'night' | 'day'): string =>
  studySvg(study, { units, palette: light === 'night' ? 'night' : 'light' });
