import { crowdingOf, type Label, type LabelSpace, type Placed, settle } from './label-space.ts';
import { textWidth } from './text-width.ts';

const RINGS = [12, 20, 30, 44, 62, 84, 110, 140, 175, 215, 260, 310];
const BEARINGS = 16;
const STEP = 10;
/** One square unit of overlap is worse than any distance on the page. */
const CROWD = 1e4;

/**
 * A place for a label that must not be missing: on rings, else the free place of the whole bounds nearest to what it names,
 * leaders crossing if they must, else the place that crowds least.
 */
export function placeSurely(label: Label, space: LabelSpace): Placed {
  const near = placeNear(label, space);
  if (near) return near;
  const { bounds } = space;
  let best: { placed: Placed; cost: number } = { placed: { label, textX: label.x, textY: label.y }, cost: 1e9 };
  for (let textY = bounds.y0 + 12; textY < bounds.y1; textY += STEP) {
    for (let textX = bounds.x0 + 2; textX < bounds.x1; textX += STEP) {
      const placed = { label, textX, textY };
      const crowd = crowdingOf(placed, { ...space, words: [] });
      const cost = crowd * CROWD + Math.hypot(textX - label.x, textY - label.y);
      if (cost < best.cost) best = { placed, cost };
    }
  }
  return settle(best.placed, space);
}

/** The free place nearest to what a label names, on widening rings around it, none wider than `widest`; null where all of them are taken. */
export function placeNear(label: Label, space: LabelSpace, widest = Number.POSITIVE_INFINITY): Placed | null {
  const { x, y, lines } = label;
  const width = textWidth(lines, 12);
  const tall = (lines.length - 1) * 14;
  for (const ring of RINGS) {
    if (ring > widest) return null;
    for (let k = 0; k < BEARINGS; k++) {
      // From straight to the right, then up and down in turn.
      const turn = ((k % 2 === 0 ? -1 : 1) * Math.ceil(k / 2) * 2 * Math.PI) / BEARINGS;
      const side = Math.cos(turn);
      const textX = x + side * ring - (width * (1 - side)) / 2;
      const textY = y + Math.sin(turn) * ring + 4 - tall / 2;
      const placed = { label, textX, textY };
      if (crowdingOf(placed, space) === 0) return settle(placed, space);
    }
  }
  return null;
}
