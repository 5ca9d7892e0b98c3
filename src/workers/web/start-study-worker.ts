import { connect, type WorkerClient } from '../connect.ts';
import type { StudyFunctions } from '../study-functions.ts';

/** Starts a worker that opens districts, makes studies and draws ground tiles. `Tile` is what a browser's map takes. */
export function startStudyWorker(name: string): WorkerClient<StudyFunctions<ImageBitmap>> {
  const worker = new Worker(new URL('./study.worker.ts', import.meta.url), { type: 'module', name });
  const client = connect<StudyFunctions<ImageBitmap>>(worker);
  const lost = (): void =>
    client.fail('The part that computes has stopped; nothing was saved or lost. Reload the page.');
  worker.addEventListener('error', lost);
  worker.addEventListener('messageerror', lost);
  return client;
}
