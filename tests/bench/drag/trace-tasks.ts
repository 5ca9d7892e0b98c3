import type { Browser, Page } from 'playwright-core';

/** One task of a thread of the page, milliseconds: from begin to end, and what of it the thread ran. */
export interface Task {
  readonly wallMs: number;
  readonly cpuMs: number;
  /** Drew a frame of the map, and waited for the renderer to take it: what else ran in the task is less. */
  readonly mapFrame: boolean;
}

export interface TracedTasks {
  /** Tasks of the page's main thread. */
  readonly main: readonly Task[];
  /** Tasks of its workers, all of them together. */
  readonly workers: readonly Task[];
}

const CATEGORIES = ['toplevel', 'devtools.timeline', 'disabled-by-default-devtools.timeline'];
/** Shorter tasks are nobody's wait, milliseconds. */
const LEAST_MS = 1;

/**
 * Runs something in a page and returns the tasks that its threads ran meanwhile. On a machine shared with others a task is
 * as long as the others let it be: `cpuMs` leaves their time out.
 */
export async function traceTasks(browser: Browser, page: Page, run: () => Promise<void>): Promise<TracedTasks> {
  await browser.startTracing(page, { categories: CATEGORIES });
  let bytes: Buffer;
  try {
    await run();
  } finally {
    // Ended whatever came of the run, or no other can begin.
    bytes = await browser.stopTracing();
  }
  const trace = JSON.parse(bytes.toString()) as { traceEvents: TraceEvent[] };
  return tasksOf(trace.traceEvents);
}

/** An event of Chromium's trace format: `ts`, `dur` and `tdur` (of the thread) in microseconds. */
interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  readonly ts: number;
  readonly dur?: number;
  readonly tdur?: number;
  readonly args: { readonly name?: string };
}

function tasksOf(events: readonly TraceEvent[]): TracedTasks {
  const named = new Map(
    events.filter(({ name }) => name === 'thread_name').map(({ pid, tid, args }) => [`${pid} ${tid}`, args.name]),
  );
  const threads = new Map<string, TraceEvent[]>();
  for (const event of events) {
    if (event.ph !== 'X') continue;
    const key = `${event.pid} ${event.tid}`;
    const own = threads.get(key);
    if (own) own.push(event);
    else threads.set(key, [event]);
  }
  const tasks = (key: string): Task[] => {
    const own = threads.get(key) ?? [];
    const frames = own.filter(({ name }) => name === 'FireAnimationFrame');
    return own
      .filter(({ name, dur = 0 }) => name === 'RunTask' && dur >= 1000 * LEAST_MS)
      .map(({ ts, dur = 0, tdur = 0 }) => ({
        wallMs: dur / 1000,
        cpuMs: tdur / 1000,
        mapFrame: frames.some((frame) => frame.ts >= ts && frame.ts < ts + dur && (frame.tdur ?? 0) > tdur / 2),
      }));
  };
  const keys = [...threads.keys()];
  // Pages of the browser's own have main threads too: the busiest is the one that was driven.
  const mains = keys.filter((key) => named.get(key) === 'CrRendererMain').map(tasks);
  const busy = (list: readonly Task[]): number => list.reduce((sum, { wallMs }) => sum + wallMs, 0);
  const main = mains.sort((a, b) => busy(b) - busy(a))[0] ?? [];
  return { main, workers: keys.filter((key) => named.get(key) === 'DedicatedWorker thread').flatMap(tasks) };
}
