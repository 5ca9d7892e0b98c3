import { type EventRecord, quantities } from '../../book/index.ts';
import { LOOSE_ABOVE } from '../../road/index.ts';
import { formatLength, formatTaped, type UnitSystem } from '../../units/index.ts';
import type { StudyReading, StudyWarning } from '../study.ts';
import { contestedWarnings } from './contested-warnings.ts';
import type { FieldInputs } from './field-inputs.ts';

/** What must be said of readings: taken over or not, gentler ones that count, and those that nothing computed explains. */
export function readingWarnings(readings: readonly StudyReading[], units: UnitSystem): StudyWarning[] {
  return readings.map((row): StudyWarning => {
    const { quantity, computed, used, betters, by, on, beyond, reason, why } = row;
    const shown = (value: number): string => readingText(row, value, units);
    const what = quantities[quantity].words;
    const none = computed === 0 && (quantity === 'stepHeightM' || quantity === 'slopeAboveDeg');
    const against = computed === null ? '' : none ? ', none computed' : `, computed ${shown(computed)}`;
    const head = `Measured ${shown(row.measured)}, ${what}, by ${by}, ${on}${against}`;
    const far = beyond ? ' They lie farther apart than their errors explain: find out which is wrong.' : '';
    if (used === 'computed')
      return { code: 'reading-not-taken', severity: 'check', text: `${head}; not taken over: ${why}.${far}` };
    const place = betters ? '' : placeWords(row, units);
    const up =
      quantity === 'slopeAboveDeg' && row.measured > LOOSE_ABOVE.angleDeg
        ? ' Look up: what can come down on the crew?'
        : '';
    const gentler = betters ? `, gentler, on two readings: ${reason}` : '';
    return {
      code: betters ? 'reading-gentler' : 'reading-counts',
      severity: betters || beyond || up !== '' || (place !== '' && row.awayM !== null) ? 'check' : 'note',
      text: `${head}: the measured one counts${gentler}.${place}${far}${up}`,
    };
  });
}

/** A worse reading stays when a site is moved: where it was taken is said. */
function placeWords({ elsewhere, awayM }: StudyReading, units: UnitSystem): string {
  if (!elsewhere) return '';
  return awayM === null
    ? ' Where it was taken was not noted.'
    : ` It was taken ${formatLength(awayM, units)} from here: take it again.`;
}

/** A reading as people see it: degrees or a tape's tenth. */
export const readingText = ({ quantity }: Pick<StudyReading, 'quantity'>, value: number, units: UnitSystem): string =>
  quantity.endsWith('Deg') ? `${Math.round(value * 10) / 10}°` : formatTaped(value, units);

/** What sign-offs and undecided values ask for. `sinceSurvey`: events that nobody has been on site after. */
export function fieldStateWarnings(
  { check, inFieldOn, contested }: FieldInputs,
  sinceSurvey: readonly EventRecord[],
): StudyWarning[] {
  const list: StudyWarning[] = sinceSurvey.map(({ name, on }) => ({
    code: 'changed-since-survey',
    severity: 'stop',
    text: changedWords(name, on),
  }));
  if (inFieldOn === null)
    list.push({
      code: 'not-field-verified',
      severity: 'note',
      text: check
        ? `Not field-verified: looked over at a desk by ${check.by} on ${check.on}.`
        : 'Not field-verified: nobody has signed for this site.',
    });
  else if (check?.due)
    list.push({
      code: 'review-due',
      severity: 'check',
      text: `Last looked at on ${inFieldOn} by ${check.by}: due again since ${check.dueOn}.`,
    });
  list.push(...contestedWarnings(contested));
  return list;
}

/** What a stop says of an event that nobody has been on site after. */
export const changedWords = (name: string, on: string): string => `${name}, ${on}: nobody has been here since.`;
