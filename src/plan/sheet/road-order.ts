import type { PlanSheet } from './sheet-types.ts';

/** Sites by road name, then along the road, then by name; roads without a name last. */
export const inRoadOrder = (sheets: readonly PlanSheet[]): PlanSheet[] =>
  [...sheets].sort(
    (a, b) => compare(roadOf(a), roadOf(b)) || stationOf(a) - stationOf(b) || compare(a.site.name, b.site.name),
  );

const roadOf = ({ study }: PlanSheet): string => study.site.road.name ?? '\uffff';
/** By mile where the markers tell one: ways of one road may be drawn against each other. */
const stationOf = ({ mile, study }: PlanSheet): number =>
  mile === null ? study.site.road.stationM / 1609.344 : Number(mile);
const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
