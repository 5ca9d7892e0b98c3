import { crowdingOf, type Label, type LabelSpace, type Placed, settle } from './label-space.ts';
import { placeNear, placeSurely } from './place-near.ts';
import { textWidth } from './text-width.ts';

const ASIDE = [16, 34, 56, 84, 120, 160, -8, -40, -80, -120, -160, -200];
const UP = [-12, -28, -46, -66, -90, -118, -150, 30, 48, 70, 96, 124];
/** Under the ground a label is harder to tie to its point. */
const BELOW = 40;

/**
 * Places labels up and to the right of their points (a descent runs down to the right, so the air is there), the nearest
 * free place of a widening set, under the ground where the air is full. A small label that finds no room is left out, since
 * it stands in the notes too; any other takes the free place nearest to its point.
 */
export function placeOnSlope(labels: readonly Label[], space: LabelSpace): Placed[] {
  return labels.flatMap((label) => {
    const places = candidates(label);
    const free = places.find((placed) => crowdingOf(placed, space) === 0);
    if (free) return [settle(free, space)];
    const near = placeNear(label, space);
    if (near) return [near];
    if (label.pen === 'small') return [];
    return [placeSurely(label, space)];
  });
}

/** Places for a label, the best first; to the left of its point half of the text lies on either side. */
function candidates(label: Label): Placed[] {
  const { x, y, lines } = label;
  const tall = (lines.length - 1) * 14;
  const width = textWidth(lines, 12);
  const cost = (dx: number, dy: number): number => Math.abs(dx) + Math.abs(dy) + (dy > 0 ? BELOW : 0);
  return ASIDE.flatMap((dx) => UP.map((dy) => ({ dx, dy })))
    .sort((a, b) => cost(a.dx, a.dy) - cost(b.dx, b.dy))
    .map(({ dx, dy }) => ({
      label,
      textX: dx > 0 ? x + dx : x + dx - width / 2,
      textY: dy < 0 ? y + dy - tall : y + dy,
    }));
}
