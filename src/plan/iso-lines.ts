/** A grid of heights, row after row; NaN where none is known. */
export interface HeightGrid {
  readonly columns: number;
  readonly rows: number;
  readonly heights: Float64Array;
}

/**
 * The lines at which a grid has a height, as column, row pairs flat, fractions of a cell; closed ones end where they begin. Marching
 * squares with linear crossings on the sides of cells; a saddle is cut by its mean; cells with a corner missing hold no line.
 */
export function isoLines({ columns, rows, heights }: HeightGrid, level: number): number[][] {
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
  for (let row = 0; row + 1 < rows; row++) {
    for (let column = 0; column + 1 < columns; column++) {
      const at = row * columns + column;
      const [a, b, c, d] = [heights[at]!, heights[at + 1]!, heights[at + columns + 1]!, heights[at + columns]!];
      // Most cells hold no crossing; a missing corner fails every comparison of the sum.
      if (!(Math.min(a, b, c, d) < level && Math.max(a, b, c, d) >= level)) continue;
      const over = [a, b, c, d].map((height) => height >= level);
      // Top, right, bottom, left.
      const sides = [at, down + at + 1, at + columns, down + at];
      const crossed = sides.filter((_, k) => over[k] !== over[(k + 1) % 4]);
      if (crossed.length === 2) link(crossed[0]!, crossed[1]!);
      else if (crossed.length === 4) {
        const cut = (a + b + c + d) / 4 >= level === over[0] ? [0, 1, 2, 3] : [3, 0, 1, 2];
        link(sides[cut[0]!]!, sides[cut[1]!]!);
        link(sides[cut[2]!]!, sides[cut[3]!]!);
      }
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
