import type { Study } from '../../study/index.ts';
import {
  formatAngleRange,
  formatDegrees,
  formatLength,
  formatPercent,
  formatTaped,
  type UnitSystem,
} from '../../units/index.ts';
import { line } from './line.ts';

/** Site, road, edge, angle and descent, each with how its number came to be. */
export function groundRows(study: Study, units: UnitSystem): string[] {
  const lines: string[] = [];
  const row = (label: string, value: string, path?: string): void => {
    const origin = path ? study.origins[path] : undefined;
    lines.push(line(label, `${value}${origin ? `  [${origin.how}]` : ''}`));
  };
  const length = (m: number): string => formatLength(m, units);
  const taped = (m: number): string => formatTaped(m, units);
  const { site, bench, edge, descent, angle, above } = study;
  row('Site', `${site.road.name ?? 'unnamed road'}, ${length(site.road.stationM)} along it, ${site.sideWords}`);
  row('Position', `${site.lat.toFixed(6)}, ${site.lon.toFixed(6)}`);
  if (bench) {
    row(
      'Road bench',
      `${bench.widthM === null ? 'width not found' : `${length(bench.widthM)} wide`}, grade ${formatDegrees(bench.gradeDeg)}, crossfall ${formatDegrees(bench.crossfallDeg)}, line ${length(Math.abs(bench.lineShiftM))} off the bench middle`,
      'bench.widthM',
    );
  }
  if (above) row('Slope above', `${formatDegrees(above.angleDeg)}, ${length(above.heightM)} high`, 'above.angleDeg');
  if (edge) {
    const band = 1.645 * edge.offsetSigmaM;
    row(
      'Edge',
      `${taped(Math.abs(edge.offsetM))} from the road line, ${taped(Math.abs(edge.offsetM) - band)} to ${taped(Math.abs(edge.offsetM) + band)} (5 to 95 %), lip ${formatDegrees(edge.lipAngleDeg)}`,
      'edge.offsetM',
    );
  }
  if (angle) {
    row(
      'Governing angle',
      `${formatDegrees(angle.governingDeg)}, ${formatAngleRange(...angle.rangeDeg)} (5 to 95 %), over ${length(angle.windowM)}; within ${length(3)} along the road up to ${formatDegrees(angle.nearbyMaxDeg)}`,
      'angle.governingDeg',
    );
    const { low, steep, high } = angle.probability;
    row(
      'Angle class',
      `${angle.class}, plan as ${angle.planAs}; rule ${angle.rule.name}: low ${formatPercent(low)}, steep ${formatPercent(steep)}, high ${formatPercent(high)}`,
      'angle.planAs',
    );
    row(
      'Rope and ground',
      `rope pull ${formatPercent(angle.ropePullOfWeight)} of the weight, ground press ${formatPercent(angle.groundPressOfWeight)} (equal at 45°)`,
      'angle.ropePullOfWeight',
    );
  }
  if (descent) {
    row(
      'Descent',
      `bears ${Math.round(descent.azimuthDeg)}°, ${length(descent.horizontalM)} out, ${length(descent.dropM)} down, ends: ${descent.end.why}`,
      'descent.dropM',
    );
    row('Rope line', formatLength(descent.ropeLineM, units, 'up'), 'descent.ropeLineM');
    for (const step of descent.steps) {
      row('Step', `about ${length(step.heightM)} at ${length(step.distanceM)} (${step.source})`);
    }
    for (const crossing of descent.crossings) {
      row('Crossing', `${crossing.kind} at ${length(crossing.distanceM)}, ${length(crossing.widthM)} wide`);
    }
    for (const contact of descent.contacts) {
      row('Contact', `at ${length(contact.distanceM)}, rope bends ${formatDegrees(contact.bendDeg)}`);
    }
    row(
      'Sight',
      descent.sightLostAtM === null
        ? 'load in sight all the way at best (vegetation not seen)'
        : `load out of sight from ${length(descent.sightLostAtM)} at the latest (vegetation not seen)`,
    );
  }
  return lines;
}
