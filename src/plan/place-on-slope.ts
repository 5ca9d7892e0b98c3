import type { Box } from './boxes.ts';
import { crowding, type Label, labelBox } from './label-space.ts';
import type { Placed } from './place-column.ts';
import { placeNear } from './place-near.ts';
import { textWidth } from './text-width.ts';

const ASIDE = [16, 34, 56, 84, 120, 160, -8, -40, -80, -120, -160, -200];
const UP = [-12, -28, -46, -66, -90, -118, -150, 30, 48, 70, 96, 124];
/** Under the ground a label is harder to tie to its point. */
const BELOW = 40;

/**
 * Places labels up and to the right of their points (a descent runs down to the right, so the air is there), the nearest
 * free place of a widening set, under the ground where the air is full. Boxes join `taken`. A label that finds no room
 * comes back without a place only when it is small: it stands in the notes too; any other takes the place that crowds least.
 */
export function placeOnSlope(labels: readonly Label[], frame: Box, taken: Box[]): Placed[] {
  return labels.flatMap((label) => {
    const places = candidates(label);
    const free = places.find(({ textX, textY }) => crowding(labelBox(label.lines, textX, textY), frame, taken) === 0);
    if (free) {
      taken.push(labelBox(label.lines, free.textX, free.textY));
      return [{ label, ...free }];
    }
    const near = placeNear(label, frame, taken);
    if (near) return [near];
    if (label.pen === 'small') return [];
    const least = places.reduce((a, b) => (crowd(label, b, frame, taken) < crowd(label, a, frame, taken) ? b : a));
    taken.push(labelBox(label.lines, least.textX, least.textY));
    return [{ label, ...least }];
  });
}

type Place = Pick<Placed, 'textX' | 'textY'>;

const crowd = ({ lines }: Label, { textX, textY }: Place, frame: Box, taken: readonly Box[]): number =>
  crowding(labelBox(lines, textX, textY), frame, taken);

/** Places for a label's first baseline, the best first; to the left of its point the text ends there. */
function candidates({ x, y, lines }: Label): Place[] {
  const tall = (lines.length - 1) * 14;
  const width = textWidth(lines, 12);
  return ASIDE.flatMap((dx) =>
    UP.map((dy) => ({
      textX: dx > 0 ? x + dx : x + dx - width * 0.5,
      textY: dy < 0 ? y + dy - tall : y + dy,
      cost: Math.abs(dx) + Math.abs(dy) + (dy > 0 ? BELOW : 0),
    })),
  ).sort((a, b) => a.cost - b.cost);
}
