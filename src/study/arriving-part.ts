import { kitArrivals } from '../spots/index.ts';
import type { Resources } from './inputs.ts';
import type { StudyArrival } from './study.ts';

/** Who arrives, with the kit and the ropes that count, in order of arrival. */
export function arrivingPart({ arrivals, kits, fleet }: Resources): StudyArrival[] {
  return [...arrivals]
    .sort((a, b) => a.atMin - b.atMin)
    .map((arrival) => ({
      atMin: arrival.atMin,
      people: arrival.people,
      kit: arrival.kitIds.map((id) => kits.find((kit) => kit.id === id)?.name ?? id),
      unit: arrival.unit,
      apparatus: fleet.find(({ id }) => id === arrival.apparatusId)?.name ?? null,
      tier: arrival.tier,
      ropesM: kitArrivals([arrival], kits).flatMap(({ ropesM }) => ropesM),
    }));
}
