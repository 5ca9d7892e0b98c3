/** Asks that overtake each other, as while a finger drags: only the newest matters. */
export interface Latest<Q> {
  /** Runs the request, or puts it in the one waiting place, where a newer one takes its place. */
  ask(request: Q): void;
  /** Forgets the waiting request and ignores the answer on its way. */
  drop(): void;
}

/**
 * One request in flight, one waiting: the one in flight is let finish (its answer is shown, the finger sees progress), the
 * one waiting is replaced. Every request that ran ends in `onAnswer` or `onError`, unless it was dropped.
 */
export function latest<Q, A>(
  run: (request: Q) => Promise<A>,
  onAnswer: (answer: A, request: Q) => void,
  onError: (error: unknown, request: Q) => void,
): Latest<Q> {
  let busy = false;
  let waiting: { request: Q } | null = null;
  let era = 0;
  const start = async (request: Q): Promise<void> => {
    busy = true;
    const mine = era;
    try {
      const answer = await run(request);
      if (mine === era) onAnswer(answer, request);
    } catch (error) {
      if (mine === era) onError(error, request);
    } finally {
      busy = false;
      const next = waiting;
      waiting = null;
      if (next) void start(next.request);
    }
  };
  return {
    ask(request) {
      if (busy) waiting = { request };
      else void start(request);
    },
    drop() {
      waiting = null;
      era++;
    },
  };
}
