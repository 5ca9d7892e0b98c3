import type { PlanSheet } from './sheet-types.ts';

/** Sites by road name, then along the road, then by name; roads without a name last. */
export const inRoadOrder = (sheets: readonly PlanSheet[]): PlanSheet[] =>
  [...sheets].sort((a, b) => compare(roadOf(a), roadOf(b)) || a.alongM - b.alongM || compare(a.site.name, b.site.name));

const roadOf = ({ study }: PlanSheet): string => study.site.road.name ?? '\uffff';
const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
