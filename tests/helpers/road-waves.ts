import type { Random } from '../../src/units/index.ts';

/** Plane waves of 3 to 10 m in all directions, together of root mean square 1. */
export type Waves = { kx: number; ky: number; phase: number; weight: number }[];

export function makeWaves(random: Random, count: number): Waves {
  return Array.from({ length: count }, () => {
    const length = 3 + 7 * random.next();
    const direction = random.next() * 2 * Math.PI;
    const k = (2 * Math.PI) / length;
    return {
      kx: k * Math.cos(direction),
      ky: k * Math.sin(direction),
      phase: random.next() * 7,
      weight: Math.sqrt(2 / count),
    };
  });
}

export const sumWaves = (waves: Waves, x: number, y: number): number => {
  let sum = 0;
  for (const { kx, ky, phase, weight } of waves) sum += weight * Math.sin(kx * x + ky * y + phase);
  return sum;
};
