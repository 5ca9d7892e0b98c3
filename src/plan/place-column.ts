import { crowdingOf, type Label, type LabelSpace, type Placed, settle } from './label-space.ts';

const ROW = 4;
const COLUMN_STEP = 22;
const COLUMNS = 6;

/**
 * Labels of things on the bench, in a column on the down-slope side: those above the descent go up the page from it, those
 * below go down, nearest first, so that leaders do not cross. Each takes the free row nearest to its own height. Labels that
 * find no room come back in `left`.
 */
export function placeColumn(
  labels: readonly Label[],
  columnX: number,
  middleY: number,
  space: LabelSpace,
): { placed: Placed[]; left: Label[] } {
  const above = labels.filter(({ y }) => y < middleY).sort((a, b) => b.y - a.y);
  const below = labels.filter(({ y }) => y >= middleY).sort((a, b) => a.y - b.y);
  const placed: Placed[] = [];
  const left: Label[] = [];
  const walk = (list: readonly Label[], way: -1 | 1): void => {
    let passed = middleY;
    for (const label of list) {
      const from = way < 0 ? Math.min(label.y, passed) : Math.max(label.y, passed);
      const found = freePlace(label, from + 4, way, columnX, space);
      if (found) {
        passed = found.textY;
        placed.push(settle(found, space));
      } else {
        left.push(label);
      }
    }
  };
  walk(above, -1);
  walk(below, 1);
  return { placed, left };
}

function freePlace(label: Label, fromY: number, way: -1 | 1, columnX: number, space: LabelSpace): Placed | null {
  for (let textY = fromY; textY > space.bounds.y0 && textY < space.bounds.y1; textY += way * ROW) {
    for (let step = 0; step < COLUMNS; step++) {
      const placed = { label, textX: columnX + step * COLUMN_STEP, textY };
      if (crowdingOf(placed, space) === 0) return placed;
    }
  }
  return null;
}
