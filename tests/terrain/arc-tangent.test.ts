import { describe, expect, it } from 'vitest';
import { arcTangent } from '../../src/terrain/products/arc-tangent.ts';

describe('arcTangent', () => {
  it('is true to the 2·10⁻⁸ that its source states, from level to a wall', () => {
    let worst = 0;
    for (let i = 0; i <= 200_000; i++) {
      const t = Math.tan((i / 200_001) * (Math.PI / 2));
      worst = Math.max(worst, Math.abs(arcTangent(t) - Math.atan(t)));
    }
    expect(worst).toBeLessThan(2e-8);
    expect(arcTangent(0)).toBe(0);
    expect(arcTangent(Number.POSITIVE_INFINITY)).toBe(Math.PI / 2);
    expect(arcTangent(Number.NaN)).toBeNaN();
  });
});
