import type { CallFunctions } from '../call/index.ts';
import { connect, type WorkerClient } from '../connect.ts';

/** Starts the call view's worker. */
export function startCallWorker(): WorkerClient<CallFunctions> {
  const worker = new Worker(new URL('./call.worker.ts', import.meta.url), { type: 'module', name: 'call' });
  const client = connect<CallFunctions>(worker);
  const lost = (): void =>
    client.fail('The part that computes has stopped; what is kept can still be read. Reload the page.');
  worker.addEventListener('error', lost);
  worker.addEventListener('messageerror', lost);
  return client;
}
