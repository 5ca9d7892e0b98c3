import { type Rounding, thousands, type UnitSystem } from './format.ts';

/** Standard gravity, m/s² (exact, third General Conference on Weights and Measures, 1901). */
export const GRAVITY = 9.80665;
/** Newtons in one pound-force (exact: 0.45359237 kg × standard gravity). */
export const LBF_N = 4.4482216152605;

/** Weight of a mass, kilograms to kilonewtons. */
export const weightKn = (massKg: number): number => (massKg * GRAVITY) / 1000;
/** Kilonewtons to pounds-force. */
export const knToLbf = (kn: number): number => (kn * 1000) / LBF_N;
/** Pounds-force to kilonewtons. */
export const lbfToKn = (lbf: number): number => (lbf * LBF_N) / 1000;

const rounders: Readonly<Record<Rounding, (value: number) => number>> = {
  up: (value) => Math.ceil(value - 1e-9),
  down: (value) => Math.floor(value + 1e-9),
  near: Math.round,
};

/** A force in kilonewtons as a text with its unit: tens of pounds-force, or kilonewtons with one decimal. */
export function formatForce(kn: number, system: UnitSystem, rounding: Rounding = 'near'): string {
  if (system === 'us') return `${thousands(rounders[rounding](knToLbf(kn) / 10) * 10)} lbf`;
  return `${(rounders[rounding](kn * 10) / 10).toFixed(1)} kN`;
}
