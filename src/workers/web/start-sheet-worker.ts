import { connect, type WorkerClient } from '../connect.ts';
import type { SheetFunctions } from '../sheet/index.ts';

/** Starts the worker that draws plan sheets. */
export function startSheetWorker(): WorkerClient<SheetFunctions> {
  const worker = new Worker(new URL('./sheet.worker.ts', import.meta.url), { type: 'module', name: 'sheet' });
  const client = connect<SheetFunctions>(worker);
  const lost = (): void =>
    client.fail('The part that draws plan sheets has stopped; the plan above stands. Open the sheet again.');
  worker.addEventListener('error', lost);
  worker.addEventListener('messageerror', lost);
  return client;
}
