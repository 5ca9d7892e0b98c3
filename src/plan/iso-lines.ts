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
  const next = new Map<number, number[]>();
  const link = (a: number, b: number): void => {
    next.set(a, [...(next.get(a) ?? []), b]);
    next.set(b, [...(next.get(b) ?? []), a]);
  };
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
      const on = next.get(side)?.pop();
      if (on === undefined) return line;
      next.set(
        on,
        next.get(on)!.filter((_, i, all) => i !== all.indexOf(side)),
      );
      line.push(...crossing(on));
      side = on;
    }
  };
  const lines: number[][] = [];
  // Open lines from their ends, then what is left: closed ones.
  for (const ends of [1, 2]) {
    for (const side of [...next.keys()]) if (next.get(side)!.length === ends) lines.push(walk(side));
  }
  return lines.filter((line) => line.length > 2);
}
