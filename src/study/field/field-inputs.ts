import type { Contested, CorrectionRecord, MeasurementRecord } from '../../book/index.ts';
import type { StudyCheck } from '../study.ts';

/** What a crew found at one site: readings, who answers for them, who signed. Of this site alone, deleted ones left out. */
export interface FieldInputs {
  readonly measurements: readonly MeasurementRecord[];
  readonly corrections: readonly CorrectionRecord[];
  /** The last sign-off: the latest by somebody who was there, else the latest at a desk; null where nobody signed. */
  readonly check: StudyCheck | null;
  /** Day of the last sign-off by somebody who was there. */
  readonly inFieldOn: string | null;
  /** Fields with more than one value that the site's result rests on. */
  readonly contested: readonly Contested[];
}
