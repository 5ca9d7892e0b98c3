import type { Random } from '../../src/units/index.ts';

/**
 * A stationary Gaussian field on a square lattice with covariance exp(−d / c): every cell is its best guess from twelve
 * cells already drawn, plus chance of the rest variance (simple kriging of the neighbours, as sequential Gaussian
 * simulation does it; Journel and Huijbregts 1978). Row-major, mean 0, standard deviation 1; `correlation` in cells.
 * A border of 24 cells is drawn and thrown away, so that the field is as even at its edge as inside.
 */
export function correlatedField(width: number, height: number, correlation: number, random: Random): Float32Array {
  const border = 24;
  const across = width + 2 * border;
  const neighbours = behind;
  const { weights, rest } = kriging(neighbours, correlation);
  const steps = neighbours.map(([dc, dr]) => dr * across + dc);
  const rows = height + border;
  const field = new Float32Array(across * rows);
  const count = steps.length;
  for (let r = 0; r < rows; r++) {
    for (let c = 0; c < across; c++) {
      const i = r * across + c;
      if (r < 3 || c < 3 || c >= across - 3) {
        field[i] = random.normal();
        continue;
      }
      let value = rest * random.normal();
      for (let k = 0; k < count; k++) value += weights[k] * field[i + steps[k]];
      field[i] = value;
    }
  }
  const out = new Float32Array(width * height);
  for (let r = 0; r < height; r++) {
    const from = (r + border) * across + border;
    out.set(field.subarray(from, from + width), r * width);
  }
  return out;
}

/** Cells drawn before a cell, as column and row steps: the two before it in its row, and ten in the two rows above. */
const behind: readonly (readonly [number, number])[] = [
  [-1, 0],
  [-2, 0],
  [-3, -1],
  [-2, -1],
  [-1, -1],
  [0, -1],
  [1, -1],
  [2, -1],
  [3, -1],
  [-1, -2],
  [0, -2],
  [1, -2],
];

/** Weights of the neighbours and the standard deviation that they leave unexplained. */
function kriging(neighbours: readonly (readonly [number, number])[], correlation: number) {
  const n = neighbours.length;
  const covariance = (dx: number, dy: number) => Math.exp(-Math.hypot(dx, dy) / correlation);
  const matrix = neighbours.map(([x, y]) => neighbours.map(([u, v]) => covariance(x - u, y - v)));
  const right = neighbours.map(([x, y]) => covariance(x, y));
  const weights = solve(matrix, right.slice());
  let explained = 0;
  for (let k = 0; k < n; k++) explained += weights[k] * right[k];
  return { weights: Float64Array.from(weights), rest: Math.sqrt(1 - explained) };
}

/** Solves a small positive definite system in place by elimination. */
function solve(a: number[][], b: number[]): number[] {
  const n = b.length;
  for (let k = 0; k < n; k++) {
    for (let i = k + 1; i < n; i++) {
      const factor = a[i][k] / a[k][k];
      for (let j = k; j < n; j++) a[i][j] -= factor * a[k][j];
      b[i] -= factor * b[k];
    }
  }
  for (let i = n - 1; i >= 0; i--) {
    for (let j = i + 1; j < n; j++) b[i] -= a[i][j] * b[j];
    b[i] /= a[i][i];
  }
  return b;
}
