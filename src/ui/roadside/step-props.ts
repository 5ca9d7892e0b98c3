import type { SiteRecord } from '../../book/index.ts';
import type { Study } from '../../study/index.ts';
import type { UnitSystem } from '../../units/index.ts';

/** What every step is given. */
export interface StepProps {
  readonly site: SiteRecord;
  readonly study: Study | null;
  readonly units: UnitSystem;
  /** Day of the check, YYYY-MM-DD. */
  readonly today: string;
  /** The step is done: what was found, in words; the next one opens. */
  onDone(found: string): void;
  /** The step could not be reached: the computed value stays. */
  onCannot(): void;
}
