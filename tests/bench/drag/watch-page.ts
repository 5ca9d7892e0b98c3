/** What the page notes while it is dragged, milliseconds. */
export interface PageTimes {
  /** From a pointer event to the frame that shows its panels: sentence, profile, layouts; of drafts and of whole studies. */
  readonly draftPainted: Painted[];
  readonly wholePainted: Painted[];
  /** In the worker, one draft or study each. */
  readonly draft: number[];
  readonly study: number[];
  /** From an answer on the main thread to the next task: state, React, drawings. */
  readonly answer: number[];
  /** Tasks over 50 ms, whatever ran in them. */
  readonly long: number[];
  /** Frames that the map drew, from begin to end of what it ran, by the page's clock. */
  readonly mapFrames: { readonly from: number; readonly to: number }[];
}

export interface Painted {
  readonly ms: number;
  /** Of it frames of the map, which a software renderer draws slowly. */
  readonly mapMs: number;
}

/** Runs in the page before its first script: times every answer of the study worker, and every frame of the map, on the main thread. */
export function watchAnswers(): void {
  const times: PageTimes = {
    ...{ draftPainted: [], wholePainted: [], draft: [], study: [], answer: [], long: [], mapFrames: [] },
  };
  const frame = window.requestAnimationFrame.bind(window);
  Object.assign(window, { pageTimes: times, plainFrame: frame });
  // The map alone asks for frames: the panels are drawn as soon as their answer is there.
  window.requestAnimationFrame = (run) =>
    frame((now) => {
      const from = performance.now();
      run(now);
      times.mapFrames.push({ from, to: performance.now() });
    });
  const add = Worker.prototype.addEventListener;
  Worker.prototype.addEventListener = function (this: Worker, type: string, listener: EventListener) {
    if (type !== 'message') return add.call(this, type, listener);
    return add.call(this, type, (event: Event) => {
      const { value } =
        (event as MessageEvent<{ value?: { study?: object; draft?: object; tookMs?: number } }>).data ?? {};
      if (!value?.study && !value?.draft) return listener.call(this, event);
      const began = performance.now();
      const next = new MessageChannel();
      next.port1.onmessage = () => {
        times.answer.push(performance.now() - began);
        next.port1.close();
      };
      (value.draft ? times.draft : times.study).push(value.tookMs ?? 0);
      listener.call(this, event);
      next.port2.postMessage(null);
    });
  } as typeof add;
  new PerformanceObserver((list) => {
    for (const { duration } of list.getEntries()) times.long.push(duration);
  }).observe({ type: 'longtask' });
}

/** Runs in the page once it stands: times from a pointer event to the frame that shows its panels. */
export function watchPanels(): void {
  const { pageTimes, plainFrame } = window as unknown as {
    pageTimes: PageTimes;
    plainFrame: typeof requestAnimationFrame;
  };
  let moved = 0;
  addEventListener(
    'pointermove',
    (event) => {
      moved = event.timeStamp;
    },
    true,
  );
  let told = (): void => undefined;
  // A move of less than what ids tell apart has no picture of its own.
  const nextPicture = (): Promise<void> =>
    new Promise((resolve) => {
      told = resolve;
      setTimeout(resolve, 1500);
    });
  Object.assign(window, { nextPicture });
  const whenPainted = (from: number, times: Painted[]): void => {
    // A task after the next frame's callback runs when that frame has been painted.
    plainFrame(() =>
      setTimeout(() => {
        const now = performance.now();
        const mapMs = pageTimes.mapFrames.reduce(
          (sum, frame) => sum + Math.max(0, Math.min(now, frame.to) - Math.max(from, frame.from)),
          0,
        );
        times.push({ ms: now - from, mapMs });
        told();
      }, 0),
    );
  };
  const top = document.querySelector<HTMLElement>('.notes-top')!;
  // All panels are drawn together; the time in the worker is said anew with each.
  new MutationObserver(() =>
    whenPainted(moved, top.dataset.draft ? pageTimes.draftPainted : pageTimes.wholePainted),
  ).observe(top, { attributes: true, attributeFilter: ['data-took-ms'] });
}
