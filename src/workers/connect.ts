import { UserError } from '../units/index.ts';
import type { AnswerOf, FromWorker, Port, RequestOf, ToWorker, WorkerFunctions } from './messages.ts';
import { transferListOf } from './transfer.ts';

/** The page's end of a worker: calls by name, typed after the list of functions that the worker serves. */
export interface WorkerClient<F extends WorkerFunctions<F>> {
  /** Rejects with a `UserError` where a person can mend it, with an `AbortError` once `signal` is aborted. */
  call<N extends keyof F & string>(name: N, request: RequestOf<F, N>, signal?: AbortSignal): Promise<AnswerOf<F, N>>;
  /** Gives up everything that waits, with this sentence; used when the worker itself is lost. */
  fail(sentence: string): void;
}

interface Waiting {
  resolve(value: unknown): void;
  reject(error: unknown): void;
  settled(): void;
}

/** Connects to a worker that runs `serve`. */
export function connect<F extends WorkerFunctions<F>>(port: Port): WorkerClient<F> {
  const waiting = new Map<number, Waiting>();
  let calls = 0;
  let lost: string | null = null;
  const take = (call: number): Waiting | undefined => {
    const found = waiting.get(call);
    waiting.delete(call);
    found?.settled();
    return found;
  };
  port.addEventListener('message', ({ data }: MessageEvent<FromWorker>) => {
    const found = take(data.call);
    if ('error' in data) found?.reject(toError(data.error));
    else found?.resolve(data.value);
  });
  return {
    call(name, request, signal) {
      if (lost !== null) return Promise.reject(new UserError('worker-lost', lost));
      if (signal?.aborted) return Promise.reject(abortError());
      const call = ++calls;
      const send = (message: ToWorker, transfer: Transferable[] = []): void => port.postMessage(message, transfer);
      return new Promise((resolve, reject) => {
        const onAbort = (): void => {
          send({ abort: call });
          take(call)?.reject(abortError());
        };
        signal?.addEventListener('abort', onAbort, { once: true });
        waiting.set(call, {
          resolve: resolve as (value: unknown) => void,
          reject,
          settled: () => signal?.removeEventListener('abort', onAbort),
        });
        send({ call, name, request }, transferListOf(request));
      });
    },
    fail(sentence) {
      lost = sentence;
      for (const call of [...waiting.keys()]) take(call)?.reject(new UserError('worker-lost', sentence));
    },
  };
}

const toError = ({ code, message }: { code: string | null; message: string }): Error =>
  code === null ? new Error(message) : new UserError(code, message);

const abortError = (): DOMException => new DOMException('The call was given up.', 'AbortError');
