import { noHaulReason, type Study } from '../study/index.ts';
import type { UnitSystem } from '../units/index.ts';
import { BESIDE_FIELD, haulCompare } from './haul-compare.ts';
import type { Pens } from './pens.ts';
import { bestOfKinds, shownLayouts } from './shown-layouts.ts';
import { element, pathThrough, text } from './svg.ts';
import { textBlock } from './text-block.ts';

/**
 * Best turned and best straight haul under one another at one scale, the drawing's own where it fits; why a kind is missing
 * stands in its place. Nothing where the study has no descent to haul over.
 */
export function comparison(
  study: Study,
  layoutId: string | null,
  { x, y, width, scale }: { x: number; y: number; width: number; scale: number },
  units: UnitSystem,
  pens: Pens,
): { svg: string; height: number } {
  const { turned, straight } = bestOfKinds(study, layoutId);
  const layouts = [turned, straight].filter((layout) => layout !== null);
  if (layouts.length === 0) return { svg: '', height: 0 };
  const { chosen } = shownLayouts(study, layoutId);
  const forTeam = study.angle?.planAs === 'high';
  const fit = Math.min(
    scale,
    ...layouts.map(({ raiseM, haulFieldM }) => Math.min(width / raiseM, (width - BESIDE_FIELD) / haulFieldM)),
  );
  const ownScale = fit < scale ? 'at one scale, smaller than the plan’s' : 'at the scale of the plan';
  let svg = text(x, y + 14, forTeam ? 'For the technical team' : 'The raise, pull by pull', pens.heading);
  const note = forTeam
    ? 'no minutes and no team size are given for a high angle'
    : `${ownScale}; tall ticks are resets`;
  svg += text(x + width, y + 14, note, { ...pens.fine, 'text-anchor': 'end' });
  svg += element('path', { ...pens.rule, d: pathThrough([x, y + 20, x + width, y + 20]) });
  let next = y + 30;
  const ordered = chosen?.kind === 'straight' ? (['straight', 'turned'] as const) : (['turned', 'straight'] as const);
  for (const kind of ordered) {
    const layout = kind === 'turned' ? turned : straight;
    if (layout) {
      const drawn = haulCompare(study, layout, layout === chosen, { x, y: next, width, scale: fit, units, pens });
      svg += drawn.svg;
      next += drawn.height + 8;
    } else {
      const block = textBlock(noHaulReason(study.warnings, kind), { x, y: next, width }, pens.fine, 'serif');
      svg += block.svg;
      next += block.height + 8;
    }
  }
  return { svg, height: next - y };
}
