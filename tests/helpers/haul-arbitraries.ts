import fc from 'fast-check';
import {
  type AdvantageName,
  advantageNames,
  type Conditions,
  type HaulArrangement,
  type HaulGround,
} from '../../src/rigging/index.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });

export const anyConditions: fc.Arbitrary<Conditions> = fc.record({
  wet: fc.boolean(),
  ice: fc.boolean(),
  night: fc.boolean(),
  wind: fc.boolean(),
  looseGround: fc.boolean(),
});

export const anyGround: fc.Arbitrary<HaulGround> = fc
  .record({
    governingDeg: between(15, 70),
    lipDeg: between(-10, 70),
    ropeLineM: between(2, 120),
    extraGroundM: between(0, 10),
    contacts: fc.array(fc.record({ bendDeg: between(0, 40), friction: fc.option(between(0.1, 0.5)) }), {
      maxLength: 3,
    }),
    fullBelay: fc.boolean(),
  })
  .map(({ extraGroundM, ...ground }) => ({ ...ground, groundLengthM: ground.ropeLineM + extraGroundM }));

export const anyAdvantage: fc.Arbitrary<AdvantageName> = fc.constantFrom(...advantageNames);

export const anyRun: fc.Arbitrary<HaulArrangement> = fc.record({
  kind: fc.constantFrom('straight', 'turned'),
  system: fc.constantFrom('built in', 'separate haul line'),
  advantage: anyAdvantage,
  edgeToTurnM: between(2.5, 8),
  fieldM: between(3, 40),
  belayRunM: between(2, 20),
  handTurns: fc.constantFrom(0, 1),
  walkingRoomM: between(3, 60),
  throwRopeM: fc.option(between(20, 200)),
});

/** The same conditions with some more of them set: `worse` is never better than `better` in any respect. */
export const worsened: fc.Arbitrary<{ better: Conditions; worse: Conditions }> = fc
  .tuple(anyConditions, anyConditions)
  .map(([a, b]) => ({
    better: a,
    worse: {
      wet: a.wet || b.wet,
      ice: a.ice || b.ice,
      night: a.night || b.night,
      wind: a.wind || b.wind,
      looseGround: a.looseGround || b.looseGround,
    },
  }));

export { between };
