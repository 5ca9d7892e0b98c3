import { connect, type WorkerClient } from '../connect.ts';
import type { FileFunctions } from '../file-functions.ts';

/** Starts the worker that reads and writes whole files: photos, places, crash records, book files. */
export function startFilesWorker(): WorkerClient<FileFunctions> {
  const worker = new Worker(new URL('./files.worker.ts', import.meta.url), { type: 'module', name: 'files' });
  const client = connect<FileFunctions>(worker);
  const lost = (): void =>
    client.fail('The part that reads files has stopped; nothing was saved or lost. Reload the page.');
  worker.addEventListener('error', lost);
  worker.addEventListener('messageerror', lost);
  return client;
}
