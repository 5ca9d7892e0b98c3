import type { Study } from '../../study/index.ts';
import type { UnitSystem } from '../../units/index.ts';
import { firstMinutes } from './first-minutes.ts';
import { boxed, type Draw, item, paragraph, stack } from './flow.ts';
import { sheetPens as pens } from './sheet-pens.ts';

/** The first five minutes as numbered steps in a box; planned as high, what the first crew does. */
export const firstBlock = (study: Study, units: UnitSystem): Draw =>
  boxed(
    stack(
      [
        paragraph(study.angle?.planAs === 'high' ? 'First crew' : 'First five minutes', pens.boxHeading),
        ...firstMinutes(study, units).map((words, i) => item(String(i + 1), words)),
      ],
      2.5,
    ),
  );
