import { expect, it } from 'vitest';
import { FALL_LINE_LIMIT_M, fallLine, noSurroundings } from '../../src/descent/index.ts';
import { seededRandom } from '../../src/units/index.ts';
import { formulaHill } from '../helpers/hill.ts';

it('comes to an end on ground full of pits and mounds, whatever they are', () => {
  const random = seededRandom(5);
  for (let k = 0; k < 60; k++) {
    const waves = Array.from({ length: 5 }, () => ({
      kx: 1.2 * random.normal(),
      ky: 1.2 * random.normal(),
      phase: 6 * random.next(),
      height: 3 * random.next(),
    }));
    const fall = 0.05 + 0.5 * random.next();
    const hill = formulaHill((x, y) =>
      waves.reduce((z, w) => z + w.height * Math.sin(w.kx * x + w.ky * y + w.phase), -fall * x),
    );
    const line = fallLine(hill, { x: 0, y: 0 }, { x: 1, y: 0 }, noSurroundings);
    expect((line.x.length - 1) * line.stepM).toBeLessThanOrEqual(FALL_LINE_LIMIT_M + 1e-6);
    expect(line.x.every(Number.isFinite)).toBe(true);
  }
});
