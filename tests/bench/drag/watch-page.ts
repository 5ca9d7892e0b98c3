/** What the page notes while it is dragged, milliseconds. */
export interface PageTimes {
  /** From a pointer event to the next frame after the panels changed. */
  readonly painted: number[];
  /** In the worker, one study each. */
  readonly study: number[];
  /** From a study's answer on the main thread to the next task: state, React, drawings. */
  readonly answer: number[];
  /** Tasks over 50 ms, whatever ran in them. */
  readonly long: number[];
}

/** Runs in the page before its first script: times every answer of the study worker on the main thread. */
export function watchAnswers(): void {
  const times: PageTimes = { painted: [], study: [], answer: [], long: [] };
  Object.assign(window, { pageTimes: times });
  const add = Worker.prototype.addEventListener;
  Worker.prototype.addEventListener = function (this: Worker, type: string, listener: EventListener) {
    if (type !== 'message') return add.call(this, type, listener);
    return add.call(this, type, (event: Event) => {
      const { value } = (event as MessageEvent<{ value?: { study?: unknown; tookMs?: number } }>).data ?? {};
      if (!value?.study) return listener.call(this, event);
      const began = performance.now();
      const next = new MessageChannel();
      next.port1.onmessage = () => {
        times.answer.push(performance.now() - began);
        next.port1.close();
      };
      times.study.push(value.tookMs ?? 0);
      listener.call(this, event);
      next.port2.postMessage(null);
    });
  } as typeof add;
  new PerformanceObserver((list) => {
    for (const { duration } of list.getEntries()) times.long.push(duration);
  }).observe({ type: 'longtask' });
}

/** Runs in the page once it stands: times from a pointer event to the frame that shows its study. */
export function watchPanels(): void {
  const { pageTimes } = window as unknown as { pageTimes: PageTimes };
  let moved = 0;
  addEventListener(
    'pointermove',
    (event) => {
      moved = event.timeStamp;
    },
    true,
  );
  new MutationObserver(() => {
    const from = moved;
    // A task after the next frame's callback runs when that frame has been painted.
    requestAnimationFrame(() => setTimeout(() => pageTimes.painted.push(performance.now() - from), 0));
  }).observe(document.querySelector('.notes-top')!, { attributes: true, attributeFilter: ['data-took-ms'] });
}
