import type { Study } from '../../study/index.ts';
import { formatLength, type UnitSystem } from '../../units/index.ts';
import { bestOfKinds } from '../shown-layouts.ts';
import { text } from '../svg.ts';
import { columns } from './columns.ts';
import { boxed, type Draw, paragraph, row, stack } from './flow.ts';
import { counted, forceRows, ropeRows } from './haul-blocks.ts';
import { sheetPens as pens } from './sheet-pens.ts';

/**
 * A closed box for the technical team of a place planned as high: layouts, rope and forces, no minutes, no team size. `narrow`:
 * one under the other.
 */
export function teamBox(study: Study, units: UnitSystem, narrow = false): Draw {
  const [layout] = study.layouts;
  if (!layout) return stack([], 0);
  const { turned, straight } = bestOfKinds(study, null);
  const hauls = [turned, straight]
    .filter((each) => each !== null)
    .flatMap(({ kind, haulFieldM, mechanicalAdvantage, resets, throwM, liftedByHandM }) => [
      row(
        `${kind} ${formatLength(haulFieldM, units, 'down')}, ${mechanicalAdvantage}`,
        counted(resets, 'reset'),
        kind === layout.kind,
      ),
      paragraph(
        `throw ${formatLength(throwM, units, 'down')}${liftedByHandM > 0.05 ? `, last ${formatLength(liftedByHandM, units, 'up')} by hand` : ''}`,
        pens.text,
      ),
    ]);
  const parts = [
    stack(hauls, 2),
    stack(ropeRows(study, layout, units, true), 2),
    stack(forceRows(study, layout, units), 2),
  ];
  const note = 'no minutes and no team size are given for a high angle';
  if (narrow)
    return boxed(
      stack([paragraph('For the technical team', pens.boxHeading), paragraph(`${note}.`, pens.textNote), ...parts], 6),
    );
  const title: Draw = ({ x, y, width }) => ({
    svg:
      text(x, y + 12, 'For the technical team', pens.boxHeading) +
      text(x + width, y + 12, note, {
        ...pens.textNote,
        'text-anchor': 'end',
      }),
    height: 16,
  });
  const body = columns(parts, [0.26, 0.32, 0.42], 18);
  return boxed(stack([title, body], 3));
}
