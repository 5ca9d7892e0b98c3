import { UserError } from '../units/index.ts';
import type { FromWorker, Port, ToWorker, WorkerFunctions } from './messages.ts';
import { transferListOf } from './transfer.ts';

/** Answers calls that come in on a port with the given functions; every call is answered, failures as sentences. */
export function serve<F extends WorkerFunctions<F>>(functions: F, port: Port): void {
  const running = new Map<number, AbortController>();
  const answer = (message: FromWorker, transfer: Transferable[] = []): void => port.postMessage(message, transfer);
  port.addEventListener('message', async ({ data }: MessageEvent<ToWorker>) => {
    if ('abort' in data) {
      running.get(data.abort)?.abort();
      return;
    }
    const { call, name, request } = data;
    const abort = new AbortController();
    running.set(call, abort);
    try {
      const run = functions[name as keyof F];
      if (!run) throw new Error(`The worker has no function "${name}".`);
      const value = await run(request as never, abort.signal);
      answer({ call, value }, transferListOf(value));
    } catch (error) {
      answer({ call, error: inWords(error) });
    } finally {
      running.delete(call);
    }
  });
}

function inWords(error: unknown): { code: string | null; message: string } {
  if (error instanceof UserError) return { code: error.code, message: error.message };
  return { code: null, message: error instanceof Error ? error.message : String(error) };
}
