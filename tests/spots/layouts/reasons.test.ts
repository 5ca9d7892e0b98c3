import { describe, expect, it } from 'vitest';
import { layoutsOf, typicalSites } from '../layout-sites.ts';

const degrees = (deg: number): number => (deg * Math.PI) / 180;
const scope = {
  sin: (deg: number) => Math.sin(degrees(deg)),
  cos: (deg: number) => Math.cos(degrees(deg)),
  ...{ exp: Math.exp, sqrt: Math.sqrt, min: Math.min, max: Math.max },
  ceil: (value: number) => Math.ceil(value - 1e-9),
  floor: (value: number) => Math.floor(value + 1e-9),
};

describe('reasons of a layout', () => {
  it('come to their own value from their own formula and inputs, each quantity once', () => {
    let counted = 0;
    for (const site of typicalSites.filter((_, k) => k % 3 === 0)) {
      for (const { reasons } of layoutsOf(site, 30).layouts) {
        for (const { quantity, value, formula, inputs } of reasons) {
          if (!Number.isFinite(value)) continue;
          const names = { ...scope, ...inputs };
          const again = new Function(...Object.keys(names), `"use strict"; return (${formula});`)(
            ...Object.values(names),
          );
          expect([quantity, again]).toEqual([quantity, expect.closeTo(value, 9)]);
          counted++;
        }
        expect(new Set(reasons.map(({ quantity }) => quantity)).size).toBe(reasons.length);
      }
    }
    expect(counted).toBeGreaterThan(300);
  });
});
