import type { Box } from './boxes.ts';
import { crowding, type Label, labelBox } from './label-space.ts';

export interface Placed {
  readonly label: Label;
  /** Left end of the first baseline. */
  readonly textX: number;
  readonly textY: number;
}

const ROW = 4;
const COLUMN_STEP = 22;

/**
 * Labels of things on the bench, in a column on the down-slope side: those above the descent go up the page from it, those
 * below go down, nearest first, so that leaders do not cross. Each takes the free row nearest to its own height; its box
 * joins `taken`. Labels that find no room come back in `left`.
 */
export function placeColumn(
  labels: readonly Label[],
  columnX: number,
  middleY: number,
  frame: Box,
  taken: Box[],
): { placed: Placed[]; left: Label[] } {
  const above = labels.filter(({ y }) => y < middleY).sort((a, b) => b.y - a.y);
  const below = labels.filter(({ y }) => y >= middleY).sort((a, b) => a.y - b.y);
  const placed: Placed[] = [];
  const left: Label[] = [];
  const walk = (list: readonly Label[], way: -1 | 1): void => {
    let passed = middleY;
    for (const label of list) {
      const from = way < 0 ? Math.min(label.y, passed) : Math.max(label.y, passed);
      const spot = freePlace(label, from + 4, way, columnX, frame, taken);
      if (!spot) {
        left.push(label);
        continue;
      }
      passed = spot.textY;
      taken.push(labelBox(label.lines, spot.textX, spot.textY));
      placed.push({ label, ...spot });
    }
  };
  walk(above, -1);
  walk(below, 1);
  return { placed, left };
}

function freePlace(
  { lines }: Label,
  fromY: number,
  way: -1 | 1,
  columnX: number,
  frame: Box,
  taken: readonly Box[],
): { textX: number; textY: number } | null {
  for (let row = 0; row < 160; row++) {
    const textY = fromY + way * row * ROW;
    if (textY < frame.y0 || textY > frame.y1) return null;
    for (let step = 0; step < 6; step++) {
      const textX = columnX + step * COLUMN_STEP;
      if (crowding(labelBox(lines, textX, textY), frame, taken) === 0) return { textX, textY };
    }
  }
  return null;
}
