import {
  type FieldValue,
  fieldValue,
  type MeasurementRecord,
  type QuantityName,
  quantities,
  takenAwayM,
  takenHere,
} from '../../book/index.ts';
import type { LonLat } from '../../geo/index.ts';
import { ok, type Result, refuse, UserError } from '../../units/index.ts';
import { type Computed, Z95 } from './computed.ts';
import type { FieldInputs } from './field-inputs.ts';
import { readingSigma } from './reading-sigma.ts';

/** A quantity that somebody read on site: what was computed, what was read, what counts. */
export interface FieldQuantity {
  readonly quantity: QuantityName;
  readonly computed: Computed;
  readonly counts: FieldValue;
  /** The worst reading, and how many there are. */
  readonly worst: MeasurementRecord;
  readonly readings: number;
  /** One sigma of the reading that counts, in its unit. */
  readonly sigma: number;
  /** Reading and computed value lie farther apart than both their 5 to 95 % ranges explain. */
  readonly beyond: boolean;
  /** From the place studied to where the worst reading was taken, metres; null where nobody noted that. */
  readonly awayM: number | null;
  /** It was taken elsewhere, or nobody noted where. */
  readonly elsewhere: boolean;
}

/** What was read on site of a ground work, and the day of the last event there. */
export interface FieldWork {
  readonly quantities: readonly FieldQuantity[];
  readonly notBefore: string | null;
}

/** Judges the readings of one quantity at a place; null where there are none. `notBefore`: day of the last event at the site. */
export function fieldQuantity(
  quantity: QuantityName,
  computed: Computed,
  { measurements, corrections }: FieldInputs,
  notBefore: string | null,
  at: LonLat,
): FieldQuantity | null {
  const own = measurements.filter((one) => one.reading.quantity === quantity && !one.deleted);
  if (own.length === 0) return null;
  const worse = quantities[quantity].worse === 'more' ? 1 : -1;
  const worst = own.reduce((a, b) => (worse * (b.reading.value - a.reading.value) > 0 ? b : a));
  const counts = fieldValue(quantity, computed, own, corrections, notBefore, at);
  const sigma = Math.max(
    ...own.filter(({ reading }) => reading.value === worst.reading.value).map((one) => readingSigma(one)),
  );
  const apart = computed.value === null ? 0 : Math.abs(worst.reading.value - computed.value);
  const beyond = Number.isFinite(apart) && apart > Z95 * Math.hypot(sigma, computed.sigma ?? 0);
  const place = { awayM: takenAwayM(at, worst), elsewhere: !takenHere(at, worst) };
  return { quantity, computed, counts, worst, readings: own.length, sigma, beyond, ...place };
}

/** The readings as they came; refuses one that no instrument can show. */
export function checkedReadings(field: FieldInputs): Result<FieldInputs> {
  for (const { reading, by, on } of field.measurements) {
    const known = quantities[reading.quantity];
    const value: unknown = reading.value;
    if (known && typeof value === 'number' && value >= known.least && value <= known.most) continue;
    const what = known?.words ?? String(reading.quantity);
    const bounds = known ? ` from ${known.least} to ${known.most}` : ' of a known quantity';
    return refuse(
      new UserError(
        'reading-bounds',
        `The reading ${String(value)} (${what}) by ${by} on ${on} is no number${bounds}; correct or delete it.`,
      ),
    );
  }
  return ok(field);
}
