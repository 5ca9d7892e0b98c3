import type { CallFunctions, CallSource } from '../../workers/call/index.ts';
import type { WorkerClient } from '../../workers/index.ts';

type Request<N extends keyof CallFunctions> = Parameters<CallFunctions[N]>[0];
type Answer<N extends keyof CallFunctions> = Awaited<ReturnType<CallFunctions[N]>>;

type Asked = 'study' | 'around' | 'keepSite' | 'keepGround' | 'finish' | 'byRoad';

/** The call view's worker, started and given its district when it is first asked. */
export interface CallWorker {
  open(source: CallSource, keeping: boolean): Promise<Answer<'open'>>;
  /** Opens the district out of what is kept if none is open yet. */
  ask<N extends Asked>(name: N, request: Request<N>, source: CallSource): Promise<Answer<N>>;
}

/** The worker and all that computes is loaded at the first question, not before the plan is on the screen. */
export function callWorker(): CallWorker {
  let started: Promise<WorkerClient<CallFunctions>> | null = null;
  let opened: Promise<Answer<'open'>> | null = null;
  const client = (): Promise<WorkerClient<CallFunctions>> => {
    started ??= import('../../workers/web/index.ts').then(({ startCallWorker }) => startCallWorker());
    return started;
  };
  const open = (source: CallSource, keeping: boolean): Promise<Answer<'open'>> => {
    const opening = client().then((worker) => worker.call('open', { source, keeping }));
    opened = opening;
    opening.catch(() => {
      if (opened === opening) opened = null;
    });
    return opening;
  };
  return {
    open,
    async ask<N extends Asked>(name: N, request: Request<N>, source: CallSource): Promise<Answer<N>> {
      await (opened ?? open(source, false));
      return (await client()).call(name, request) as Promise<Answer<N>>;
    },
  };
}
