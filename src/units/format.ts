import { FOOT_M } from './length.ts';

/** What people read: US customary (feet) or metric (metres). */
export type UnitSystem = 'us' | 'metric';

/** Which way a shown figure is rounded: up for what is needed, down for what is at hand, near where neither errs. */
export type Rounding = 'up' | 'down' | 'near';

const rounders: Readonly<Record<Rounding, (value: number) => number>> = {
  up: (value) => Math.ceil(value - 1e-9),
  down: (value) => Math.floor(value + 1e-9),
  near: Math.round,
};

const lengthIn = (metres: number, system: UnitSystem): number => (system === 'us' ? metres / FOOT_M : metres);

/** A figure with its thousands apart, up to three decimals; the browser's own formatter takes milliseconds of a cold start. */
export function thousands(value: number): string {
  const [whole, decimals] = String(Math.round(value * 1000) / 1000).split('.');
  const apart = whole!.replace(/\B(?=(\d{3})+$)/g, ',');
  return decimals === undefined ? apart : `${apart}.${decimals}`;
}

/** A length in metres as a text with its unit: whole feet, or metres with one decimal under 10 m. */
export function formatLength(metres: number, system: UnitSystem, rounding: Rounding = 'near'): string {
  return `${formatLengthFigure(metres, system, rounding)} ${lengthUnit(system)}`;
}

/** A length in metres with one decimal in either system, for what a tape measures. */
export const formatTaped = (metres: number, system: UnitSystem): string =>
  `${lengthIn(metres, system).toFixed(1)} ${lengthUnit(system)}`;

/** The figure of `formatLength` without its unit. */
export function formatLengthFigure(metres: number, system: UnitSystem, rounding: Rounding = 'near'): string {
  const value = lengthIn(metres, system);
  const step = Math.abs(value) < 10 ? 10 : 1;
  const rounded = rounders[rounding](value * step) / step;
  return thousands(rounded);
}

/** The unit word that stands behind a length. */
export const lengthUnit = (system: UnitSystem): string => (system === 'us' ? 'ft' : 'm');

/** An angle in whole degrees, with its sign. */
export const formatDegrees = (degrees: number): string => `${Math.round(degrees)}°`;

/** A 5–95 % range of angles, rounded outward to whole degrees: "33 to 36". */
export const formatAngleRange = (low: number, high: number): string =>
  `${Math.floor(low + 1e-9)} to ${Math.ceil(high - 1e-9)}`;

/** A share as whole percent that never says 0 % or 100 %: a finite number of draws cannot exclude what it did not see. */
export function formatPercent(share: number): string {
  if (share < 0.01) return 'under 1 %';
  if (share > 0.99) return 'over 99 %';
  return `${Math.round(share * 100)} %`;
}

const winds = ['north', 'northeast', 'east', 'southeast', 'south', 'southwest', 'west', 'northwest'] as const;

/** Compass word of a true azimuth in degrees, eight points. */
export const compassWord = (azimuthDeg: number): string =>
  winds[Math.round((((azimuthDeg % 360) + 360) % 360) / 45) % 8]!;
