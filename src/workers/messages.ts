/** What a worker can be asked: name → a function of one request, which may be aborted. Requests and answers are clonable. */
export type WorkerFunctions<F = Record<string, unknown>> = {
  readonly [N in keyof F]: (request: never, signal: AbortSignal) => Promise<unknown>;
};

export type RequestOf<F extends WorkerFunctions<F>, N extends keyof F> = Parameters<F[N]>[0];
export type AnswerOf<F extends WorkerFunctions<F>, N extends keyof F> = Awaited<ReturnType<F[N]>>;

/** Page → worker: a call, or the wish that a running one be given up. */
export type ToWorker =
  | { readonly call: number; readonly name: string; readonly request: unknown }
  | { readonly abort: number };

/** Worker → page: every call is answered exactly once. `code` is that of a `UserError`, or null for any other failure. */
export type FromWorker =
  | { readonly call: number; readonly value: unknown }
  | { readonly call: number; readonly error: { readonly code: string | null; readonly message: string } };

/** The two ends of a worker, a message port or a test's pair of ports. */
export interface Port {
  postMessage(message: unknown, transfer: Transferable[]): void;
  addEventListener(type: 'message', listener: (event: MessageEvent) => void): void;
}
