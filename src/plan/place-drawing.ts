import type { UnitSystem } from '../units/index.ts';
import { grown, holds } from './boxes.ts';
import type { Label } from './label-space.ts';
import { placePaths } from './place-paths.ts';
import { placeSizeWords } from './place-size.ts';
import type { ShownPlace } from './place-words.ts';
import type { PlanFrame } from './plan-frame.ts';
import { SYMBOL, symbolAt } from './symbol.ts';

/** Landing zones, staging and parking that lie inside a plan view, each with its name and size where it stands. */
export function placeDrawing(
  places: readonly ShownPlace[],
  frame: PlanFrame,
  units: UnitSystem,
): { svg: string; labels: Label[] } {
  let svg = '';
  const labels: Label[] = [];
  for (const place of places) {
    const [x, y] = frame.at(place.at);
    if (!holds(grown(frame.box, -SYMBOL / 2), { x0: x, y0: y, x1: x, y1: y })) continue;
    svg += symbolAt(placePaths[place.kind], place.kind, x, y, frame);
    // What size would be asked for stands in the words beside the drawing.
    const size = placeSizeWords(place, units).replace(/ \(.*\)$/, '');
    labels.push({ x, y, lines: [place.kind, ...size.split(', ').filter(Boolean)], pen: 'label' });
  }
  return { svg, labels };
}
