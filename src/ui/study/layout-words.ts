import type { Study, StudyForce, StudyLayout } from '../../study/index.ts';
import { compassWord, formatForce, type UnitSystem } from '../../units/index.ts';

/** "Turned haul west", "Straight haul": the direction is from the turn to the anchor. */
export function layoutName({ kind, points }: StudyLayout): string {
  if (kind === 'straight' || !points.turn) return 'Straight haul';
  const east = (points.anchor.lon - points.turn.lon) * Math.cos((points.turn.lat * Math.PI) / 180);
  const north = points.anchor.lat - points.turn.lat;
  return `Turned haul ${compassWord((Math.atan2(east, north) * 180) / Math.PI)}`;
}

/** An apparatus or a mark by its id, as the study names it. */
export function anchorName({ spots, marks }: Study, id: string): string {
  const spot = spots.find((one) => one.id === id);
  const mark = marks.find((one) => one.id === id);
  return spot?.apparatus ?? (mark ? (mark.name ?? mark.kind) : id);
}

/** "hold 4.3 of 3 needed", "2.1 of 3, not met", "judge on site". */
export function forceWords({ kind, factor, required, ok }: StudyForce): string {
  if (ok === 'judge on site') return 'judge on site';
  if (factor === null || required === null) return ok === 'yes' ? 'met' : 'not met';
  const shown = (Math.floor(factor * 10) / 10).toFixed(1);
  return ok === 'yes' ? `${kind} ${shown} of ${required} needed` : `${kind} ${shown} of ${required}, not met`;
}

/** The force on it, rounded up. */
export const forceFigure = ({ kn }: StudyForce, units: UnitSystem): string => formatForce(kn, units, 'up');

const fitWords = { yes: 'reaches', joined: 'only joined', no: 'short' } as const;

/** How the rope that comes fits, tier by tier. */
export const ropeFits = ({ fits }: StudyLayout): readonly (readonly [string, string])[] => [
  ['first arriving', fitWords[fits.firstArriving]],
  ['first alarm', fitWords[fits.firstAlarm]],
  ['mutual aid', fitWords[fits.mutualAid]],
];
