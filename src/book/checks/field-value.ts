import type { LonLat } from '../../geo/index.ts';
import { type CorrectionRecord, type MeasurementRecord, type QuantityName, quantities } from '../schema/index.ts';
import { takenHere } from './taken-here.ts';

/** What the computation found of a quantity; null where it found nothing. */
export interface ComputedValue {
  readonly value: number | null;
  /** The stretch that governs, horizontal metres from the edge; null where the quantity has none. */
  readonly stretchM: readonly [from: number, to: number] | null;
}

/** The value that counts for a quantity, and why. */
export interface FieldValue {
  readonly quantity: QuantityName;
  readonly value: number | null;
  readonly computed: number | null;
  readonly how: 'computed' | 'measured';
  /** It betters the result: marked wherever it is shown. */
  readonly betters: boolean;
  /** Ids of the readings behind the value. */
  readonly readings: readonly string[];
  /** Largest sigma that a reading behind the value states, in its unit; null where one states none. */
  readonly sigma: number | null;
  /** Who answers for it, and the reason given where it betters. */
  readonly by: string | null;
  readonly reason: string | null;
  /** Readings that would better the result, and what they still lack. */
  readonly waiting: { readonly best: number; readonly readings: number; readonly lacks: readonly Lack[] } | null;
}

export type Lack = 'second reading' | 'taken here' | 'name and reason' | 'computed anew';

/** How far the computed value may move before a correction is asked for again, in the quantity's unit; common practice, no source. */
const MOVED = 0.5;
/** A reading is of the governing stretch where it covers half of it and is not over twice as long; common practice, no source. */
const COVERS = 0.5;
const LONGEST = 2;

/**
 * The rule for readings of one quantity of one site: one that makes the result worse counts at once, the worst first; what betters it
 * needs two readings on the governing stretch, by two people or on two days, a name and a reason, and then the worst reading
 * counts. A value that was not computed is bettered by any. Readings up to `notBefore` (the day of the last event there)
 * better nothing, nor do those that were taken elsewhere than `at`, or nobody noted where; null: the place is not asked for.
 */
export function fieldValue(
  quantity: QuantityName,
  computed: ComputedValue,
  readings: readonly MeasurementRecord[],
  corrections: readonly CorrectionRecord[],
  notBefore: string | null = null,
  at: LonLat | null = null,
): FieldValue {
  const worse = quantities[quantity].worse === 'more' ? 1 : -1;
  const own = readings
    .filter((one) => one.reading.quantity === quantity && !one.deleted)
    .sort((a, b) => worse * (b.reading.value - a.reading.value) || (a.id < b.id ? -1 : 1));
  const plain = { quantity, computed: computed.value, betters: false, reason: null, waiting: null };
  const worst = own[0];
  if (!worst) return { ...plain, value: computed.value, how: 'computed', readings: [], sigma: null, by: null };
  const behind = own.filter(({ reading }) => reading.value === worst.reading.value);
  const measured = { how: 'measured', value: worst.reading.value, readings: behind.map(({ id }) => id) } as const;
  const figures = { ...measured, sigma: sigmaOf(behind), by: worst.by };
  if (computed.value !== null && worse * (worst.reading.value - computed.value) >= 0) return { ...plain, ...figures };
  const anywhere = own.filter((one) => onStretch(one, computed) && (notBefore === null || one.on > notBefore));
  const counting = anywhere.filter((one) => at === null || takenHere(at, one));
  const correction = latest(corrections.filter((one) => one.quantity === quantity && !one.deleted));
  const named = counting.filter(({ id }) => correction?.measurementIds.includes(id));
  const lacks: Lack[] = [];
  if (!independentReadings(counting) || (correction && !independentReadings(named))) lacks.push('second reading');
  if (lacks.length > 0 && counting.length < anywhere.length) lacks.push('taken here');
  if (!correction || correction.by.trim() === '' || correction.reason.trim() === '') lacks.push('name and reason');
  else if (moved(correction.computed, computed.value)) lacks.push('computed anew');
  if (lacks.length === 0) {
    const sigma = sigmaOf(counting);
    return { ...plain, ...measured, sigma, betters: true, by: correction!.by, reason: correction!.reason };
  }
  const waiting = { best: worst.reading.value, readings: counting.length, lacks };
  return { ...plain, value: computed.value, how: 'computed', readings: [], sigma: null, by: null, waiting };
}

function onStretch({ stretchM }: MeasurementRecord, { stretchM: governing }: ComputedValue): boolean {
  if (!governing) return true;
  if (!stretchM) return false;
  const length = governing[1] - governing[0];
  const shared = Math.min(stretchM.to, governing[1]) - Math.max(stretchM.from, governing[0]);
  return shared >= COVERS * length && stretchM.to - stretchM.from <= LONGEST * length;
}

/** Two of them were taken by different people or on different days: a slip is not written down twice (common practice, no source). */
export const independentReadings = (readings: readonly Taker[]): boolean =>
  readings.some((one) => one.on !== readings[0]!.on || personOf(one) !== personOf(readings[0]!));

type Taker = Pick<MeasurementRecord, 'by' | 'on'>;

const personOf = ({ by }: Taker): string => by.trim().replace(/\s+/gu, ' ').toLowerCase();

const moved = (seen: number | null, now: number | null): boolean =>
  seen === null || now === null ? seen !== now : Math.abs(seen - now) > MOVED;

const latest = (corrections: readonly CorrectionRecord[]): CorrectionRecord | undefined =>
  [...corrections].sort((a, b) => (a.on < b.on ? 1 : a.on > b.on ? -1 : a.id < b.id ? 1 : -1))[0];

function sigmaOf(readings: readonly MeasurementRecord[]): number | null {
  const stated = readings.map(({ sigma }) => sigma);
  return stated.some((sigma) => sigma === null) ? null : Math.max(...(stated as number[]));
}
