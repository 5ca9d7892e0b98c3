import type { Apparatus, Kit, Rates, UnitArrival } from '../../book/index.ts';
import { arrivalOf, type Conditions, type GearRatings, type KitArrival } from '../../rigging/index.ts';
import { gearRatings, kitArrivals } from './kit-at-hand.ts';

/** Who and what comes to a site, sorted out once for a search; minutes after the first arrival. */
export interface Means {
  readonly rates: Rates;
  readonly conditions: Conditions;
  readonly arrivals: readonly UnitArrival[];
  readonly patients: number;
  readonly planHigh: boolean;
  readonly units: readonly Unit[];
  readonly kits: readonly KitArrival[];
  readonly ratings: GearRatings;
  /** Ropes that have come by the first alarm and by mutual aid, metres, longest first. */
  readonly alarmRopesM: readonly number[];
  readonly allRopesM: readonly number[];
  /** Ropes there after none, one, two … of `kits`. */
  readonly ropesAfter: readonly (readonly number[])[];
  readonly peopleByAlarm: number;
  /** Minute at which so many people are there, by their count; null where they never are. */
  readonly peopleAtMin: readonly (number | null)[];
}

/** An apparatus on its way. Units of one class are alike in everything that a layout asks. */
export interface Unit {
  readonly apparatus: Apparatus;
  readonly atMin: number;
  readonly likeness: string;
}

export function meansOf(input: {
  readonly rates: Rates;
  readonly conditions: Conditions;
  readonly fleet: readonly Apparatus[];
  readonly arrivals: readonly UnitArrival[];
  readonly kits: readonly Kit[];
  readonly patients: number;
  readonly planHigh: boolean;
}): Means {
  const { rates, conditions, arrivals, patients, planHigh } = input;
  const kits = kitArrivals(arrivals, input.kits);
  const ropes = (of: readonly KitArrival[]): number[] => of.flatMap(({ ropesM }) => ropesM).sort((a, b) => b - a);
  const byAlarm = arrivals.filter(({ tier }) => tier !== 'mutual aid');
  return {
    ...{ rates, conditions, arrivals, patients, planHigh, kits },
    units: unitsComing(input.fleet, arrivals),
    ratings: gearRatings(arrivals, input.kits),
    alarmRopesM: ropes(kits.filter(({ tier }) => tier !== 'mutual aid')),
    allRopesM: ropes(kits),
    ropesAfter: Array.from({ length: kits.length + 1 }, (_, k) => ropes(kits.slice(0, k))),
    peopleAtMin: Array.from({ length: MOST_PEOPLE }, (_, count) => arrivalOf(count, arrivals)),
    peopleByAlarm: byAlarm.reduce((sum, { people }) => sum + people, 0),
  };
}

/** More than any crew of a haul; counts past it are looked up. */
const MOST_PEOPLE = 60;

/** Minute at which so many people are there; null where they never are. */
export const crewAtMin = (
  { peopleAtMin, arrivals }: Pick<Means, 'peopleAtMin' | 'arrivals'>,
  count: number,
): number | null => (count < MOST_PEOPLE ? peopleAtMin[count] : arrivalOf(count, arrivals));

/** Ropes that are there by a minute, metres, longest first. */
export function ropesBy({ kits, ropesAfter }: Pick<Means, 'kits' | 'ropesAfter'>, atMin: number): readonly number[] {
  let k = 0;
  while (k < kits.length && kits[k].atMin <= atMin) k++;
  return ropesAfter[k];
}

function unitsComing(fleet: readonly Apparatus[], arrivals: readonly UnitArrival[]): Unit[] {
  const units = fleet.flatMap((apparatus): Unit[] => {
    const coming = arrivals.filter(({ apparatusId }) => apparatusId === apparatus.id);
    if (coming.length === 0) return [];
    const atMin = Math.min(...coming.map((arrival) => arrival.atMin));
    return [{ apparatus, atMin, likeness: likenessOf(apparatus) }];
  });
  return units.sort((a, b) => a.atMin - b.atMin || (a.apparatus.id < b.apparatus.id ? -1 : 1));
}

/** Equal for apparatus that stand and hold alike. */
export function likenessOf(apparatus: Apparatus): string {
  const { lengthM, widthM, wheelbaseM, turningRadiusM, emptyMassKg, grossMassKg, attachments } = apparatus;
  const eyes = attachments.map(({ end, ratedKn }) => `${end} ${ratedKn}`);
  return [lengthM, widthM, wheelbaseM, turningRadiusM, emptyMassKg, grossMassKg, ...eyes].join();
}
