/**
 * Tiles of the next overview: means of the two by two cells that have data, NaN where none has. Tiles by their index, row-major, of
 * `across` and half as many (rounded up) to a row; a tile that has none of the four under it is left out.
 */
export function halved(
  tiles: ReadonlyMap<number, Float32Array>,
  across: number,
  side: number,
): Map<number, Float32Array> {
  const half = side / 2;
  const nextAcross = Math.ceil(across / 2);
  const next = new Map<number, Float32Array>();
  for (const [index, tile] of tiles) {
    const col = index % across;
    const row = Math.floor(index / across);
    const to = (row >> 1) * nextAcross + (col >> 1);
    const made = next.get(to) ?? new Float32Array(side * side).fill(Number.NaN);
    next.set(to, made);
    const corner = (row & 1) * half * side + (col & 1) * half;
    for (let y = 0; y < half; y++) {
      for (let x = 0; x < half; x++) made[corner + y * side + x] = mean(tile, 2 * y * side + 2 * x, side);
    }
  }
  return next;
}

function mean(tile: Float32Array, at: number, side: number): number {
  let sum = 0;
  let count = 0;
  for (let k = 0; k < 4; k++) {
    const height = tile[at + (k >> 1) * side + (k & 1)]!;
    if (Number.isNaN(height)) continue;
    sum += height;
    count++;
  }
  return count > 0 ? sum / count : Number.NaN;
}
