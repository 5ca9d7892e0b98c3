import { FOOT_M, formatTaped, type UnitSystem } from '../../units/index.ts';
import type { TakenRow } from './taken-rows.ts';

/** A value as the field shows it: whole degrees, or a tape's tenth. */
export const readingFigure = (value: number, unit: TakenRow['unit'], units: UnitSystem): string =>
  unit === 'degrees' ? `${Math.round(value * 10) / 10}°` : formatTaped(value, units);

/** A typed value in the unit of the record. */
export const readingValue = (typed: number, unit: TakenRow['unit'], units: UnitSystem): number =>
  unit === 'degrees' || units === 'metric' ? typed : Math.round(typed * FOOT_M * 1e4) / 1e4;

/** The word behind a field. */
export const readingUnit = (unit: TakenRow['unit'], units: UnitSystem): string =>
  unit === 'degrees' ? 'degrees' : units === 'us' ? 'feet' : 'metres';

/** How far a reading lies from the computed value, with its sign. */
export function apartWords({ readings, computed, unit }: TakenRow, units: UnitSystem): string {
  const last = readings.at(-1);
  if (!last || computed === null || !Number.isFinite(computed)) return '';
  const apart = last.reading.value - computed;
  const figure = readingFigure(Math.abs(apart), unit, units);
  return `${apart < 0 ? '−' : '+'}${figure}`;
}

/** What counts and why, in two or three words. */
export function usedWords({ counts }: TakenRow): string {
  if (counts.how === 'measured') return counts.betters ? 'measured, gentler' : 'measured';
  return counts.value === null ? 'none' : 'computed';
}
