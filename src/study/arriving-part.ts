import { kitArrivals } from '../spots/index.ts';
import type { Resources } from './inputs.ts';
import type { StudyArrival } from './study.ts';

/** Who arrives, with the kit and the ropes that count, in order of arrival. */
export function arrivingPart({ arrivals, kits }: Resources): StudyArrival[] {
  return [...arrivals]
    .sort((a, b) => a.atMin - b.atMin)
    .map((arrival) => ({
      atMin: arrival.atMin,
      people: arrival.people,
      kit: arrival.kitIds.map((id) => kits.find((kit) => kit.id === id)?.name ?? id),
      unit: arrival.unit,
      tier: arrival.tier,
      ropesM: kitArrivals([arrival], kits).flatMap(({ ropesM }) => ropesM),
    }));
}
