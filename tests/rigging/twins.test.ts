import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type AdvantageName,
  actualAdvantage,
  advantageNames,
  capstanFactor,
  holdKn,
  idealAdvantage,
  pulls,
  regripsPerPull,
  resultantKn,
  throwByField,
  turnForce,
  twoLegKn,
} from '../../src/rigging/index.ts';
import { GRAVITY } from '../../src/units/index.ts';
import { anyAdvantage, between } from '../helpers/haul-arbitraries.ts';

const seeded = { seed: 77_013, numRuns: 300 };
const angle = between(-Math.PI, Math.PI);

/** Sum of plan forces given by size and mathematical angle, turned by any amount and back. */
function sum(forces: readonly (readonly [kn: number, rad: number])[], turn: number): { kn: number; rad: number } {
  let x = 0;
  let y = 0;
  for (const [kn, rad] of forces) {
    x += kn * Math.cos(rad + turn);
    y += kn * Math.sin(rad + turn);
  }
  return { kn: Math.sqrt(x * x + y * y), rad: Math.atan2(y, x) - turn };
}

const unitAt = (rad: number, length = 1) => ({ x: length * Math.cos(rad), y: length * Math.sin(rad) });

describe('forces by explicit sums in the plane', () => {
  it('a turned line: size and direction, whatever the length of the leg vectors', () => {
    fc.assert(
      fc.property(
        between(0, 10),
        between(0, 10),
        angle,
        angle,
        angle,
        between(0.1, 50),
        (t1, t2, a, b, turn, length) => {
          const want = sum(
            [
              [t1, a],
              [t2, b],
            ],
            turn,
          );
          const got = turnForce(t1, unitAt(a, length), t2, unitAt(b));
          expect(Math.abs(got.kn - want.kn)).toBeLessThan(1e-9);
          expect(Math.abs(resultantKn(t1, t2, a - b) - want.kn)).toBeLessThan(1e-6);
          if (want.kn > 1e-6) {
            expect(got.toward.x).toBeCloseTo(Math.cos(want.rad), 6);
            expect(got.toward.y).toBeCloseTo(Math.sin(want.rad), 6);
          }
        },
      ),
      seeded,
    );
  });

  it('two legs carry their load: the forces of both and the load come to nothing', () => {
    fc.assert(
      fc.property(between(0.1, 20), between(0, 2.9), angle, (kn, between2, turn) => {
        const leg = twoLegKn(kn, between2);
        const rest = sum(
          [
            [leg, between2 / 2],
            [leg, -between2 / 2],
            [kn, Math.PI],
          ],
          turn,
        );
        expect(rest.kn).toBeLessThan(1e-9 * leg + 1e-9);
      }),
      seeded,
    );
  });

  it('an apparatus: the pull at which friction no longer opposes pull and weight, found by halving', () => {
    const fall = fc.record({ x: between(-0.12, 0.12), y: between(-0.12, 0.12) });
    let held = 0;
    fc.assert(
      fc.property(
        between(2000, 30_000),
        between(0.1, 0.5),
        between(0.3, 1),
        fall,
        angle,
        (kg, friction, braked, slope, at) => {
          const got = holdKn(kg, friction, braked, slope, unitAt(at));
          const tilt = Math.atan(Math.hypot(slope.x, slope.y));
          const weight = (kg * GRAVITY) / 1000;
          const limit = weight * Math.cos(tilt) * braked * friction;
          const slides = weight * Math.sin(tilt);
          const downAt = Math.atan2(slope.y, slope.x);
          // A pull with a part up the fall is taken as one across it: no credit for holding against the weight.
          const across = Math.cos(at - downAt) < 0 ? downAt + Math.PI / 2 : at;
          const moves = (pull: number): boolean =>
            sum(
              [
                [pull, across],
                [slides, downAt],
              ],
              0.3,
            ).kn > limit;
          let low = 0;
          let high = 1000;
          for (let i = 0; i < 80; i++) {
            const middle = (low + high) / 2;
            if (moves(middle)) high = middle;
            else low = middle;
          }
          expect(got).toBeCloseTo(moves(0) ? 0 : low, 6);
          if (got > 0) held++;
        },
      ),
      seeded,
    );
    expect(held).toBeGreaterThan(100);
  });
});

describe('friction by small steps', () => {
  it('dT = μ T dβ, a hundred thousand steps', () => {
    for (const [friction, bend] of [
      [0.44, Math.PI / 2],
      [0.2, 0.6],
      [0.37, 1.2],
    ] as const) {
      let tension = 1;
      const steps = 100_000;
      for (let i = 0; i < steps; i++) tension *= 1 + (friction * bend) / steps;
      expect(capstanFactor(friction, bend)).toBeCloseTo(tension, 4);
    }
  });
});

/** Tension bookkeeping through a simple n:1: the hand's tension loses at each sheave; the strands on the load add up. */
function strandSum(n: number, efficiency: number): number {
  let strand = 1;
  let load = 0;
  for (let i = 0; i < n; i++) {
    load += strand;
    strand *= efficiency;
  }
  return load;
}

const built: Readonly<Record<AdvantageName, readonly number[]>> = {
  '2:1': [2],
  '3:1': [3],
  '5:1': [5],
  '6:1': [3, 2],
  '9:1': [3, 3],
};

describe('advantage and throw, strand by strand and millimetre by millimetre', () => {
  it('tensions add up to the polynomial', () => {
    for (const name of advantageNames) {
      for (const efficiency of [1, 0.9, 0.5]) {
        const want = built[name].reduce((product, n) => product * strandSum(n, efficiency), 1);
        expect(actualAdvantage(name, efficiency)).toBeCloseTo(want, 12);
      }
      expect(idealAdvantage(name)).toBe(Number.parseInt(name, 10));
    }
  });

  it('the load moves until the first stage has run out of its field', () => {
    for (const name of advantageNames) {
      for (const fieldM of [2.5, 7.5, 23.5]) {
        let movedMm = 0;
        const traveller = built[name].map(() => 0);
        for (;;) {
          let step = 1;
          for (let stage = 0; stage < traveller.length; stage++) {
            traveller[stage]! += step;
            step *= built[name][stage]!;
          }
          if (traveller.some((mm) => mm > fieldM * 1000)) break;
          movedMm++;
        }
        expect(Math.abs(throwByField(name, [fieldM]) - movedMm / 1000)).toBeLessThanOrEqual(0.001);
      }
    }
  });
});

/** Hauls pull by pull: take in the throw, lose the sit-back when the capture takes over, until the load is up. */
function simulatePulls(raiseM: number, stretchM: number, throwM: number, sitBackM: number): number {
  let leftMm = Math.round((raiseM + stretchM) * 1e6);
  let count = 0;
  while (leftMm > 0) {
    leftMm -= Math.round((throwM - sitBackM) * 1e6);
    count++;
  }
  return count;
}

/** Walks the pull in lengths of the room; the first length needs no new grip. */
function simulateGrips(walkM: number, roomM: number): number {
  let walked = Math.round(roomM * 1e6);
  let grips = 0;
  while (walked < Math.round(walkM * 1e6)) {
    walked += Math.round(roomM * 1e6);
    grips++;
  }
  return grips;
}

describe('pulls and new grips by walking through them', () => {
  const mm = (from: number, to: number) =>
    fc.integer({ min: from * 1000, max: to * 1000 }).map((value) => value / 1000);

  it('agrees with the count of pulls', () => {
    fc.assert(
      fc.property(mm(1, 150), mm(0, 4), mm(1, 30), mm(0, 0.5), (raise, stretch, reach, sitBack) => {
        expect(pulls(raise, stretch, reach, sitBack)).toBe(simulatePulls(raise, stretch, reach, sitBack));
      }),
      seeded,
    );
  });

  it('agrees with the count of new grips', () => {
    fc.assert(
      fc.property(anyAdvantage, mm(1, 30), mm(2, 60), (name, reach, room) => {
        const walkM = idealAdvantage(name) * reach;
        expect(regripsPerPull(walkM, room)).toBe(simulateGrips(walkM, room));
      }),
      seeded,
    );
  });

  it('counts a raise that ends on a whole pull as that pull, up to 1e-9, and one more beyond', () => {
    expect(pulls(90, 0, 30, 0)).toBe(3);
    expect(pulls(0.1 + 0.2, 0, 0.1, 0)).toBe(3);
    expect(pulls(90 + 1e-9, 0, 30, 0)).toBe(3);
    expect(pulls(90 + 1e-6, 0, 30, 0)).toBe(4);
    expect(regripsPerPull(0.1 + 0.2, 0.1)).toBe(2);
    expect(regripsPerPull(60, 0)).toBe(Number.POSITIVE_INFINITY);
    expect(pulls(10, 0, 0.25, 0.25)).toBe(Number.POSITIVE_INFINITY);
  });
});
