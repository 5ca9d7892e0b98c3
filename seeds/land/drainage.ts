import { seededRandom } from '../../src/units/index.ts';

/** Where water goes on a lattice: filled anew by `route`. */
export interface Drainage {
  /** Cells from the outlets up, so that a cell comes after the one it drains to. */
  readonly order: Int32Array;
  /** Index of the cell each drains to; its own where it is an outlet or a pit. */
  readonly receiver: Int32Array;
  /** Distance to it, metres. */
  readonly distance: Float32Array;
  /** Area that drains through the cell, m². */
  readonly gathered: Float32Array;
  /** Routes by steepest descent among eight neighbours; `outlet` cells keep their water. */
  route(height: ArrayLike<number>, outlet: Uint8Array, cell: number): void;
}

/**
 * Steepest-descent routing and its bottom-up order (the stack of Braun and Willett 2013), lattice width by height. Slopes
 * are weighed by seeded chance, so that valleys do not line up with the lattice.
 */
export function drainage(width: number, height: number, seed: number): Drainage {
  const count = width * height;
  const random = seededRandom(seed);
  const favour = Float32Array.from({ length: count * 9 }, () => 0.6 + 0.8 * random.next());
  const order = new Int32Array(count);
  const receiver = new Int32Array(count);
  const distance = new Float32Array(count);
  const gathered = new Float32Array(count);
  const firstGiver = new Int32Array(count);
  const nextGiver = new Int32Array(count);

  function receive(z: ArrayLike<number>, outlet: Uint8Array, cell: number): void {
    const diagonal = Math.SQRT2 * cell;
    for (let r = 0, i = 0; r < height; r++) {
      for (let c = 0; c < width; c++, i++) {
        receiver[i] = i;
        distance[i] = 1;
        if (outlet[i]) continue;
        let steepest = 0;
        for (let dr = -1; dr <= 1; dr++) {
          for (let dc = -1; dc <= 1; dc++) {
            const rr = r + dr;
            const cc = c + dc;
            if ((dr === 0 && dc === 0) || rr < 0 || cc < 0 || rr >= height || cc >= width) continue;
            const length = dr !== 0 && dc !== 0 ? diagonal : cell;
            const j = rr * width + cc;
            const slope = ((z[i] - z[j]) / length) * favour[i * 9 + dr * 3 + dc + 4];
            if (slope <= steepest) continue;
            steepest = slope;
            receiver[i] = j;
            distance[i] = length;
          }
        }
      }
    }
  }

  function stack(): void {
    firstGiver.fill(-1);
    for (let i = 0; i < count; i++) {
      const to = receiver[i];
      if (to === i) continue;
      nextGiver[i] = firstGiver[to];
      firstGiver[to] = i;
    }
    let filled = 0;
    for (let i = 0; i < count; i++) if (receiver[i] === i) order[filled++] = i;
    for (let k = 0; k < filled; k++) {
      for (let giver = firstGiver[order[k]]; giver >= 0; giver = nextGiver[giver]) order[filled++] = giver;
    }
  }

  function route(z: ArrayLike<number>, outlet: Uint8Array, cell: number): void {
    receive(z, outlet, cell);
    stack();
    gathered.fill(cell * cell);
    for (let k = count - 1; k >= 0; k--) {
      const i = order[k];
      if (receiver[i] !== i) gathered[receiver[i]] += gathered[i];
    }
  }
  return { order, receiver, distance, gathered, route };
}
