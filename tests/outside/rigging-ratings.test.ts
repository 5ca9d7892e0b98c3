import { describe, expect, it } from 'vitest';
import { defaultKits, defaultRates, picketReferenceLbf } from '../../src/book/index.ts';
import { againstCapacity } from '../../src/rigging/index.ts';
import { lbfToKn } from '../../src/units/index.ts';

const force = (kn: number) => ({ kn, toward: { x: 0, y: 1 } });
const where = { at: 'belay anchor', kind: 'belay', rule: 'test' } as const;

describe('ratings and static factors', () => {
  it('rescue load 600 lbf = 2.669 kN, one person 300 lbf (read) [source: rescue-load]; the belay floor is no less', () => {
    expect(lbfToKn(600)).toBeCloseTo(2.669, 3);
    expect(lbfToKn(300)).toBeCloseTo(1.334, 3);
    expect(defaultRates.belayFloorKn).toBeGreaterThanOrEqual(lbfToKn(600));
  });

  it('40 kN on 2.669 kN is 14.99; a knot that keeps 80 % leaves 11.99 (derived)', () => {
    expect(againstCapacity(where, force(2.669), 40, 10).factor).toBeCloseTo(14.99, 2);
    expect(againstCapacity(where, force(2.669), 40 * 0.8, 10).factor).toBeCloseTo(11.99, 2);
  });

  it('40 kN under a full party of 5.05 kN is 7.9, which 10:1 does not accept (derived)', () => {
    const check = againstCapacity(where, force(5.05), 40, defaultRates.heldFactor);
    expect(check.factor).toBeCloseTo(7.92, 2);
    expect(check.ok).toBe('no');
  });

  it('pickets (read) [source: picket-manuals]: 1-1-1 against 485 lbf is 3.7, so it fails 10:1', () => {
    expect(Object.values(picketReferenceLbf)).toEqual([700, 1800, 4000]);
    const check = againstCapacity(where, force(lbfToKn(485)), lbfToKn(picketReferenceLbf['three in line, 1-1-1']), 10);
    expect(check.factor).toBeCloseTo(3.7, 1);
    expect(check.ok).toBe('no');
  });

  it('shipped gear: descent device 22 kN (read), general-use rope 40, pulley 36, carabiner 40 kN (recalled) [source: nfpa-1983]', () => {
    for (const kit of defaultKits) {
      expect(kit.ropes.map((rope) => rope.ratedKn)).toEqual([40]);
      const rated = Object.fromEntries(kit.items.map((item) => [item.kind, item.ratedKn]));
      expect(rated).toMatchObject({ pulley: 36, carabiner: 40, 'descent device': 22 });
    }
  });
});
