import type { StudyFunctions, WorkerClient } from '../../workers/index.ts';
import type { BookLog } from '../state/index.ts';

export interface DeskWorkers {
  readonly study: WorkerClient<StudyFunctions<ImageBitmap>>;
  readonly map: WorkerClient<StudyFunctions<ImageBitmap>>;
}

/** What every group of actions stands on. */
export interface Deps {
  readonly workers: DeskWorkers;
  readonly log: BookLog;
}
