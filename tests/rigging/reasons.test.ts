import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { defaultRates } from '../../src/book/index.ts';
import { fairConditions, haul, type Reason, ropeReasons, tensionReasons } from '../../src/rigging/index.ts';
import { anyConditions, anyGround, anyRun, between } from '../helpers/haul-arbitraries.ts';

const degrees = (deg: number): number => (deg * Math.PI) / 180;
const scope = {
  sin: (deg: number) => Math.sin(degrees(deg)),
  cos: (deg: number) => Math.cos(degrees(deg)),
  exp: Math.exp,
  sqrt: Math.sqrt,
  min: Math.min,
  max: Math.max,
  ceil: (value: number) => Math.ceil(value - 1e-9),
  floor: (value: number) => Math.floor(value + 1e-9),
};

/** Works a reason out again from its own formula and inputs alone. */
function rework({ formula, inputs }: Reason): number {
  const names = { ...scope, ...inputs };
  return new Function(...Object.keys(names), `"use strict"; return (${formula});`)(...Object.values(names)) as number;
}

describe('reasons', () => {
  it('come to their own value from their own formula and inputs, on any haul', () => {
    const position = fc.record({ angleDeg: between(0, 80), contactsFactor: between(1, 1.6) });
    let counted = 0;
    fc.assert(
      fc.property(
        anyGround,
        fc.array(position, { maxLength: 3 }),
        anyRun,
        anyConditions,
        (base, positions, run, conditions) => {
          const ground = { ...base, positions };
          const result = haul(ground, run, conditions, defaultRates);
          const reasons = [
            ...tensionReasons(ground, run, conditions, defaultRates, result),
            ...ropeReasons(ground, run, defaultRates, result),
          ];
          for (const reason of reasons) {
            if (!Number.isFinite(reason.value)) continue;
            expect([reason.quantity, rework(reason)]).toEqual([reason.quantity, expect.closeTo(reason.value, 9)]);
            counted++;
          }
          expect(new Set(reasons.map(({ quantity }) => quantity)).size).toBe(reasons.length);
        },
      ),
      { seed: 4_411, numRuns: 300 },
    );
    expect(counted).toBeGreaterThan(4000);
  });

  it('name rates by the names under which a book keeps them', () => {
    const ground = { governingDeg: 33, lipDeg: 33, ropeLineM: 45, groundLengthM: 45, contacts: [], fullBelay: false };
    const run = {
      kind: 'straight',
      system: 'built in',
      advantage: '9:1',
      edgeToTurnM: 0,
      fieldM: 12,
      belayRunM: 12,
      handTurns: 1,
      walkingRoomM: 20,
      throwRopeM: 90,
    } as const;
    const result = haul(ground, run, fairConditions, defaultRates);
    const named = [
      ...tensionReasons(ground, run, fairConditions, defaultRates, result),
      ...ropeReasons(ground, run, defaultRates, result),
    ].flatMap(({ inputs }) => Object.entries(inputs));
    const rates: Readonly<Record<string, number>> = defaultRates;
    const fromBook = named.filter(([name]) => name in rates);
    expect(fromBook.length).toBeGreaterThan(15);
    for (const [name, value] of fromBook) expect([name, value]).toEqual([name, rates[name]]);
  });

  it('tell the clearances of the field, by the rates in use, also where the rope limits the throw', () => {
    const ground = { governingDeg: 33, lipDeg: 33, ropeLineM: 45, groundLengthM: 45, contacts: [], fullBelay: false };
    const rates = { ...defaultRates, clearanceNearM: 2.2, clearanceAnchorM: 2.8 };
    const run = {
      kind: 'turned',
      system: 'separate haul line',
      advantage: '3:1',
      edgeToTurnM: 2,
      fieldM: 40,
      belayRunM: 6,
      handTurns: 1,
      walkingRoomM: 40,
    } as const;
    const reasonsWith = (throwRopeM: number): Reason[] => {
      const arrangement = { ...run, throwRopeM };
      return ropeReasons(ground, arrangement, rates, haul(ground, arrangement, fairConditions, rates));
    };
    for (const throwRopeM of [60, 600]) {
      const told = reasonsWith(throwRopeM).filter(({ inputs }) => 'clearanceNearM' in inputs);
      expect(told).toHaveLength(1);
      expect(told[0]!.inputs).toMatchObject({ clearanceNearM: 2.2, clearanceAnchorM: 2.8 });
      expect(told[0]!.value).toBeCloseTo(35, 9);
    }
    expect(reasonsWith(60)[0]!.value).toBeLessThan(25);
    expect(reasonsWith(600)[0]!.value).toBeCloseTo(35, 9);
  });
});
