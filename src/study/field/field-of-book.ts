import {
  type Book,
  contestedForSite,
  fieldCheck,
  live,
  type MeasurementRecord,
  quantityNames,
  settingsOf,
} from '../../book/index.ts';
import type { FieldInputs } from './field-inputs.ts';

/** A site is looked at again after so many months where the book says nothing. */
const REVIEW_MONTHS = 12;

/**
 * What a book holds of a site from the field, for `StudyInputs.field`; null where there is no site. A reading with two values that
 * nobody decided between counts with each of them, so that the worse one is used. `today`: YYYY-MM-DD.
 */
export function fieldOfBook(book: Book, siteId: string | null, today: string): FieldInputs | null {
  if (siteId === null) return null;
  const own = <T extends { readonly siteId: string | null }>(records: readonly T[]): T[] =>
    records.filter((record) => record.siteId === siteId);
  const contested = contestedForSite(book, siteId);
  const months = settingsOf(book)?.reviewMonths ?? REVIEW_MONTHS;
  const { latest, inField, dueOn, due } = fieldCheck(book.tables.signOffs, siteId, months, today);
  const signed = inField ?? latest;
  return {
    measurements: own(live(book, 'measurements')).flatMap((one) => [one, ...otherReadings(one, contested)]),
    corrections: own(live(book, 'corrections')),
    check: signed && {
      by: signed.by,
      role: signed.role ?? '',
      on: signed.on,
      method: signed.method,
      conditions: signed.conditions ?? '',
      dueOn,
      due,
    },
    inFieldOn: inField?.on ?? null,
    contested,
  };
}

/** The values of a contested reading that the record does not carry. */
function otherReadings(record: MeasurementRecord, contested: FieldInputs['contested']): MeasurementRecord[] {
  return contested
    .filter(({ table, id, field }) => table === 'measurements' && id === record.id && field === 'reading')
    .flatMap(({ values }) => values.map(({ value }) => value as MeasurementRecord['reading']))
    .filter(
      (reading) =>
        quantityNames.includes(reading?.quantity) &&
        (reading.quantity !== record.reading.quantity || reading.value !== record.reading.value),
    )
    .map((reading) => ({ ...record, reading }));
}
