import { expect, it } from 'vitest';
import { defaultArrivals, defaultKits, defaultRates } from '../../../src/book/index.ts';
import { fairConditions } from '../../../src/rigging/index.ts';
import { findWays, kitArrivals, type LowerTo, type Way } from '../../../src/spots/index.ts';
import { layoutsOf, typicalSites } from '../layout-sites.ts';

const lowerLeg: LowerTo = { what: 'road', name: null, groundM: 35, ropeLineM: 35, goesOn: false };

/** Ways of a typical roadside by its number: low under 30°, the lip bending by the slope's own angle where none is named. */
function waysOf(number: number): Way[] {
  const site = typicalSites[number - 1]!;
  const [first] = layoutsOf(site).layouts;
  const { angleDeg, groundM, lipDeg = angleDeg } = site.slope;
  const arrivals = site.arrivals ?? defaultArrivals;
  return findWays({
    raise: {
      ropeM: first!.haul.ropeM.main,
      ropeReaches: first!.fits.mutualAid.fit === 'yes',
      people: first!.people.leastRaise,
      minutes: first!.minutes,
    },
    lowerRunM: first!.run.belayRunM,
    carryRunM: first!.run.belayRunM,
    slope: {
      planLow: angleDeg < 30,
      step: false,
      lipChangeDeg: lipDeg,
      angleHighDeg: angleDeg,
      groundM,
      ropeLineM: groundM,
    },
    crossings: number === 14 ? [lowerLeg] : [],
    arrivals,
    kits: kitArrivals(arrivals, defaultKits),
    conditions: site.conditions ?? fairConditions,
    patients: 1,
    alternatingLane: first!.closure === 'one lane in turn',
    units: 'us',
    rates: defaultRates,
  });
}

it.each(typicalSites.map(({ name }, i) => [name, i + 1] as const))(
  'leads as an instructor expects: %s',
  (_name, number) => {
    const [way] = waysOf(number);
    const wanted = number === 1 || number === 16 ? 'carry' : number === 14 ? 'lower' : 'raise';
    expect(way!.kind).toBe(wanted);
  },
);

it('tells the raise second where it lowers or carries', () => {
  for (const number of [1, 14, 16]) expect(waysOf(number)[1]).toMatchObject({ kind: 'raise', allowed: true });
  // One more than where the road is closed: the layouts there leave a lane, which somebody holds.
  expect(waysOf(14)[0]).toMatchObject({ people: { count: 9, atMin: 9 }, shown: { from: 25, to: 45 } });
  expect(waysOf(1)[0]).toMatchObject({ people: { count: 8, atMin: 8 }, shown: { from: 25, to: 45 } });
  expect(waysOf(16)[0]).toMatchObject({ people: { count: 7, atMin: 8 }, shown: { from: 20, to: 40 } });
});
