/** What the page notes while it is dragged, milliseconds. */
export interface PageTimes {
  /** From a pointer event to the frame that shows its profile, with the sentence's first part. */
  readonly profile: number[];
  /** From a pointer event to the frame that shows all of its study, layouts with it. */
  readonly painted: number[];
  /** In the worker, one study each. */
  readonly study: number[];
  /** In the worker, what the ground alone says, each. */
  readonly ahead: number[];
  /** From a study's answer on the main thread to the next task: state, React, drawings. */
  readonly answer: number[];
  /** Tasks over 50 ms, whatever ran in them. */
  readonly long: number[];
}

/** Runs in the page before its first script: times every answer of the study worker on the main thread. */
export function watchAnswers(): void {
  const times: PageTimes = { profile: [], painted: [], study: [], ahead: [], answer: [], long: [] };
  Object.assign(window, { pageTimes: times });
  const add = Worker.prototype.addEventListener;
  Worker.prototype.addEventListener = function (this: Worker, type: string, listener: EventListener) {
    if (type !== 'message') return add.call(this, type, listener);
    return add.call(this, type, (event: Event) => {
      const { value } =
        (event as MessageEvent<{ value?: { study?: { sentence?: string }; tookMs?: number } }>).data ?? {};
      if (!value?.study) return listener.call(this, event);
      const began = performance.now();
      const next = new MessageChannel();
      next.port1.onmessage = () => {
        times.answer.push(performance.now() - began);
        next.port1.close();
      };
      const isAhead = /Hauls are being worked out/.test(value.study.sentence ?? '');
      (isAhead ? times.ahead : times.study).push(value.tookMs ?? 0);
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
  const whenPainted = (from: number, times: number[]): void => {
    // A task after the next frame's callback runs when that frame has been painted.
    requestAnimationFrame(() => setTimeout(() => times.push(performance.now() - from), 0));
  };
  let profileOf = 0;
  new MutationObserver(() => {
    if (profileOf !== moved) whenPainted(moved, pageTimes.profile);
    profileOf = moved;
  }).observe(document.querySelector('.profile-paper')!, { childList: true });
  new MutationObserver(() => whenPainted(moved, pageTimes.painted)).observe(document.querySelector('.notes-top')!, {
    attributes: true,
    attributeFilter: ['data-took-ms'],
  });
}
