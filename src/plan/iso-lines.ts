/** A grid of heights, row after row; NaN where none is known. */
export interface HeightGrid {
  readonly columns: number;
  readonly rows: number;
  readonly heights: Float64Array;
}

/** The cells that each multiple of an interval runs through, by the multiple: one pass over the grid for all of them. */
function crossedCells({ columns, rows, heights }: HeightGrid, interval: number): Map<number, number[]> {
  const cells = new Map<number, number[]>();
  for (let row = 0; row + 1 < rows; row++) {
    for (let at = row * columns; at + 1 < (row + 1) * columns; at++) {
      const a = heights[at]!;
      const b = heights[at + 1]!;
      const c = heights[at + columns + 1]!;
      const d = heights[at + columns]!;
      // A missing corner makes both bounds NaN, and no multiple lies between.
      const low = Math.min(a, b, c, d);
      const high = Math.max(a, b, c, d);
      for (let step = Math.floor(low / interval); step * interval <= high; step++) {
        if (step * interval <= low) continue;
        const those = cells.get(step);
        if (those) those.push(at);
        else cells.set(step, [at]);
      }
    }
  }
  return cells;
}

/**
 * The lines at which a grid has a multiple of an interval, as column, row pairs flat, fractions of a cell, by the multiple, lowest
 * first; closed ones end where they begin. Marching squares with linear crossings on the sides of cells; a saddle is cut by its
 * mean; cells with a corner missing hold no line.
 */
export const isoLines = (grid: HeightGrid, interval: number): { readonly step: number; readonly lines: number[][] }[] =>
  [...crossedCells(grid, interval)]
    .sort(([a], [b]) => a - b)
    .map(([step, cells]) => ({ step, lines: linesThrough(cells, grid, step * interval) }));

function linesThrough(cells: readonly number[], { columns, rows, heights }: HeightGrid, level: number): number[][] {
  // A crossing by the side it lies on: sides along a row first, then those down a column.
  const down = columns * rows;
  // The two sides that each is joined to, −1 for none; a line has two ends or none, so two are enough.
  const links = new Int32Array(4 * down).fill(-1);
  const crossedSides: number[] = [];
  const put = (side: number, to: number): void => {
    if (links[2 * side] === -1) links[2 * side] = to;
    else links[2 * side + 1] = to;
  };
  const link = (a: number, b: number): void => {
    put(a, b);
    put(b, a);
    crossedSides.push(a, b);
  };
  /** Takes a link away and gives its other end; −1 where there is none. */
  const take = (side: number): number => {
    const k = links[2 * side + 1] === -1 ? 2 * side : 2 * side + 1;
    const on = links[k]!;
    links[k] = -1;
    if (on !== -1) links[links[2 * on] === side ? 2 * on : 2 * on + 1] = -1;
    return on;
  };
  const countOf = (side: number): number => (links[2 * side] === -1 ? 0 : 1) + (links[2 * side + 1] === -1 ? 0 : 1);
  for (const at of cells) {
    const a = heights[at]!;
    const b = heights[at + 1]!;
    const c = heights[at + columns + 1]!;
    const d = heights[at + columns]!;
    const top = a >= level !== b >= level ? at : -1;
    const right = b >= level !== c >= level ? down + at + 1 : -1;
    const bottom = c >= level !== d >= level ? at + columns : -1;
    const left = d >= level !== a >= level ? down + at : -1;
    if (top !== -1 && right !== -1 && bottom !== -1 && left !== -1) {
      const joined = (a + b + c + d) / 4 >= level === a >= level;
      link(joined ? top : left, joined ? right : top);
      link(joined ? bottom : right, joined ? left : bottom);
    } else {
      const first = top !== -1 ? top : right !== -1 ? right : bottom;
      link(first, left !== -1 ? left : bottom !== -1 && bottom !== first ? bottom : right);
    }
  }
  const crossing = (side: number): [number, number] => {
    const [at, step] = side < down ? [side, 1] : [side - down, columns];
    const share = (level - heights[at]!) / (heights[at + step]! - heights[at]!);
    const [column, row] = [at % columns, Math.floor(at / columns)];
    return step === 1 ? [column + share, row] : [column, row + share];
  };
  const walk = (start: number): number[] => {
    const line = [...crossing(start)];
    let side = start;
    for (;;) {
      const on = take(side);
      if (on === -1) return line;
      line.push(...crossing(on));
      side = on;
    }
  };
  const lines: number[][] = [];
  // Open lines from their ends, then what is left: closed ones.
  for (const ends of [1, 2]) {
    for (const side of crossedSides) if (countOf(side) === ends) lines.push(walk(side));
  }
  return lines.filter((line) => line.length > 2);
}
