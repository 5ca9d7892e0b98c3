import type { Origin, Study } from '../../study/index.ts';
import {
  formatAngleRange,
  formatDegrees,
  formatLength,
  formatLengthFigure,
  formatPercent,
  type UnitSystem,
} from '../../units/index.ts';

/** One line of the list of numbers: what, how much, its range or what belongs to it, and where it comes from. */
export interface StudyRow {
  readonly label: string;
  readonly value: string;
  readonly more: string;
  readonly how: Origin['how'];
  readonly rule: string | null;
  /** Where its origin stands in the study. */
  readonly path: string;
}

/** Standard normal value below which 95 % lie (derived). */
const Z95 = 1.645;

/** The numbers of a study that decide something, from the road to the end of the descent. */
export function studyRows(study: Study, units: UnitSystem): StudyRow[] {
  const rows: StudyRow[] = [];
  const { bench, above, edge, descent, angle, origins } = study;
  const length = (m: number): string => formatLength(m, units);
  const add = (label: string, value: string, more: string, path: string): void => {
    const origin = origins[path];
    rows.push({ label, value, more, how: origin?.how ?? 'computed', rule: origin?.rule ?? null, path });
  };
  if (angle) {
    add(
      'Governing angle',
      formatDegrees(angle.governingDeg),
      `${formatAngleRange(...angle.rangeDeg)}, steepest ${length(angle.windowM)}`,
      'angle.governingDeg',
    );
    add(
      'Steepest nearby',
      formatDegrees(angle.nearbyMaxDeg),
      `within ${length(3)} along the road`,
      'angle.nearbyMaxDeg',
    );
  }
  if (edge) {
    const out = Math.abs(edge.offsetM);
    const band = Z95 * edge.offsetSigmaM;
    add('Edge from road line', length(out), rangeWords(Math.max(0, out - band), out + band, units), 'edge.offsetM');
    add('Lip', formatDegrees(edge.lipAngleDeg), 'change of slope at the edge', 'edge.lipAngleDeg');
  }
  if (bench) {
    add(
      'Road bench',
      bench.widthM === null ? 'not found' : length(bench.widthM),
      `grade ${formatDegrees(Math.abs(bench.gradeDeg))}, crossfall ${formatDegrees(Math.abs(bench.crossfallDeg))}`,
      'bench.widthM',
    );
  }
  if (above) add('Slope above', formatDegrees(above.angleDeg), `${length(above.heightM)} high`, 'above.angleDeg');
  if (descent) {
    add(
      'Drop',
      length(descent.dropM),
      `over ${length(descent.horizontalM)}, ${ends[descent.end.why]}`,
      'descent.dropM',
    );
    add('Rope line', formatLength(descent.ropeLineM, units, 'up'), 'taut over the high points', 'descent.ropeLineM');
    const bends = descent.contacts.map(({ distanceM, bendDeg }) => `${formatDegrees(bendDeg)} at ${length(distanceM)}`);
    if (bends.length > 0) add('Contacts', `${bends.length}`, bends.join(', '), 'descent.ropeLineM');
    for (const step of descent.steps) {
      add('Step', length(step.heightM), `at ${length(step.distanceM)}, ${stepSources[step.source]}`, 'descent.steps');
    }
    for (const crossing of descent.crossings) {
      const wide = crossing.widthM > 0 ? `, ${length(crossing.widthM)} wide` : '';
      add('Crossing', crossing.kind, `at ${length(crossing.distanceM)}${wide}`, 'descent.crossings');
    }
    add(
      'Load in sight',
      descent.sightLostAtM === null ? 'all the way' : `to ${formatLength(descent.sightLostAtM, units, 'down')}`,
      'at best: vegetation not seen',
      'descent.sightLostAtM',
    );
  }
  return rows;
}

/** What the angle asks of a rope: shares of the weight. */
export const weightWords = ({ ropePullOfWeight, groundPressOfWeight }: NonNullable<Study['angle']>): string =>
  `rope pull ${formatPercent(ropePullOfWeight)} of weight, ground press ${formatPercent(groundPressOfWeight)}; equal at 45°`;

/** A range of lengths, rounded outward. */
const rangeWords = (low: number, high: number, units: UnitSystem): string =>
  `${formatLengthFigure(low, units, 'down')} to ${formatLength(high, units, 'up')} (5 to 95 %)`;

const ends: Readonly<Record<NonNullable<Study['descent']>['end']['why'], string>> = {
  'patient point': 'to the patient point',
  'ground levels': 'to where the ground levels',
  water: 'to the water',
  road: 'to the road below',
  limit: 'slope goes on past the limit of this study',
  'fall line bends': 'to where the fall line bends',
  'no data': 'to where the elevation data end',
};

const stepSources = { ground: 'found in the ground', mark: 'marked', map: 'mapped', measured: 'measured' } as const;
