import type { Study } from '../../study/index.ts';
import { formatDegrees, formatLength, type UnitSystem } from '../../units/index.ts';

/** Where a site was put, as a person would say it: road, side in driving words, edge, angle. */
export function placeWords({ site, edge, angle }: Study, units: UnitSystem): string {
  const words = [
    `${site.road.name ?? 'Unnamed road'}, ${formatLength(site.road.stationM, units)} along it, ${site.sideWords}`,
  ];
  words.push(edge ? `edge ${formatLength(Math.abs(edge.offsetM), units)} out` : 'no drop edge here');
  if (angle) words.push(`about ${formatDegrees(angle.governingDeg)}`);
  return words.join(' · ');
}
