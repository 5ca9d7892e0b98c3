import type { Hill } from '../../src/descent/index.ts';

/** A hill that is a formula: heights exact, gradient by central differences over 0.02 m. */
export function formulaHill(height: (x: number, y: number) => number, more: Partial<Hill> = {}): Hill {
  const along = (x: number, y: number, dx: number, dy: number, n: number, out: Float64Array, offset: number): void => {
    for (let i = 0; i < n; i++) out[offset + i] = height(x + i * dx, y + i * dy);
  };
  return {
    cellM: 1,
    screeningOnly: false,
    sigmaM: 0.05,
    heights: along,
    cubicHeights: along,
    gradient(x, y, out) {
      out[0] = (height(x + 0.01, y) - height(x - 0.01, y)) / 0.02;
      out[1] = (height(x, y + 0.01) - height(x, y - 0.01)) / 0.02;
    },
    ...more,
  };
}

const tan = (degrees: number): number => Math.tan((degrees * Math.PI) / 180);

/** Level ground for x ≤ 0, then a plane falling east at `angleDeg` for `lengthM`, then level again. */
export const bankHill = (angleDeg: number, lengthM: number, more: Partial<Hill> = {}): Hill =>
  formulaHill((x) => 100 - tan(angleDeg) * Math.min(lengthM, Math.max(0, x)), more);
