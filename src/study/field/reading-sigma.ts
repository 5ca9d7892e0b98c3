import type { MeasurementRecord } from '../../book/index.ts';
import { FOOT_M } from '../../units/index.ts';

type Tool = MeasurementRecord['tool'];

/** One sigma of an angle read over 5 m, eye to eye, degrees (common practice, no source). */
const degreesOf: Readonly<Record<Tool, number>> = {
  inclinometer: 1,
  laser: 1,
  phone: 2,
  'hand level': 2,
  tape: 3,
  wheel: 3,
  eye: 5,
  other: 5,
};

/** One sigma of a length: a fixed part, metres, and a share of the length (common practice, no source). */
const lengthOf: Readonly<Record<Tool, readonly [fixedM: number, share: number]>> = {
  tape: [FOOT_M / 2, 0.01],
  laser: [FOOT_M, 0.01],
  wheel: [FOOT_M, 0.02],
  'hand level': [FOOT_M, 0.05],
  inclinometer: [FOOT_M, 0.1],
  phone: [FOOT_M, 0.1],
  eye: [FOOT_M, 0.25],
  other: [FOOT_M, 0.25],
};

/** One sigma of a reading in its own unit: what its record states, else what is usual with its tool. */
export function readingSigma({ reading, sigma, tool }: MeasurementRecord): number {
  if (sigma !== null) return sigma;
  if (reading.quantity.endsWith('Deg')) return degreesOf[tool];
  const [fixedM, share] = lengthOf[tool];
  return fixedM + share * reading.value;
}
