import { beforeEach, expect, test, vi } from 'vitest';
import type { DeskWorkers } from '../../src/ui/actions/deps.ts';
import { createStudyActions } from '../../src/ui/actions/study-actions.ts';
import { emptyStudy, type OpenDistrict, shownStudy, useDistrict, useStudy } from '../../src/ui/state/index.ts';

/** A worker whose answers the test gives; a call that was given up is refused at once, as the page's end of a worker does. */
function handWorker() {
  const open: { name: string; lon: number; resolve: (value: unknown) => void; gone: () => boolean }[] = [];
  const call = (name: string, { at }: { at: { lon: number } }, signal?: AbortSignal): Promise<unknown> =>
    new Promise((resolve, reject) => {
      open.push({ name, lon: at.lon, resolve, gone: () => signal?.aborted ?? false });
      signal?.addEventListener('abort', () => reject(new DOMException('Given up.', 'AbortError')));
    });
  const answer = async (name: string, lon: number): Promise<void> => {
    const i = open.findIndex((one) => one.name === name && one.lon === lon);
    if (i < 0) throw new Error(`Nobody asked ${name} at ${lon}.`);
    open.splice(i, 1)[0]!.resolve(name === 'draft' ? { draft: { name, lon } } : { study: { name, lon } });
    await vi.advanceTimersByTimeAsync(0);
  };
  const workers = { study: { call, fail() {} }, map: { call, fail() {} } } as unknown as DeskWorkers;
  return {
    workers,
    answer,
    asked: () => open.map(({ name, lon, gone }) => `${name} ${lon}${gone() ? ', given up' : ''}`),
  };
}

const at = (lon: number) => ({
  ...{ at: { lon, lat: 44 }, side: 'of the point' as const, patient: null, patients: 1, pins: {} },
});
const shown = () => shownStudy(useStudy.getState()) as unknown as { name: string; lon: number } | null;
const REST_MS = 120;

beforeEach(() => {
  vi.useFakeTimers();
  useStudy.setState(emptyStudy);
  useDistrict.setState({ district: {} as OpenDistrict });
  return () => vi.useRealTimers();
});

test('while a point moves drafts are shown and never kept; when it rests the whole study takes their place', async () => {
  const { workers, answer, asked } = handWorker();
  const study = createStudyActions({ workers });
  study.follow(at(1));
  expect(asked()).toEqual(['draft 1']);
  await answer('draft', 1);
  expect(shown()).toEqual({ name: 'draft', lon: 1 });
  expect(useStudy.getState()).toMatchObject({ answer: null, working: true, stale: false });
  await vi.advanceTimersByTimeAsync(REST_MS);
  expect(asked()).toEqual(['study 1']);
  await answer('study', 1);
  expect(shown()).toEqual({ name: 'study', lon: 1 });
  expect(useStudy.getState()).toMatchObject({ draft: null, working: false, stale: false });
});

test('the newest of the points that wait is asked next; only the one that rests is worked out whole', async () => {
  const { workers, answer, asked } = handWorker();
  const study = createStudyActions({ workers });
  for (const lon of [1, 2, 3]) study.follow(at(lon));
  await answer('draft', 1);
  expect(shown()).toEqual({ name: 'draft', lon: 1 });
  expect(asked()).toEqual(['draft 3']);
  await answer('draft', 3);
  study.follow(at(4));
  await vi.advanceTimersByTimeAsync(2 * REST_MS);
  expect(asked()).toEqual(['draft 4']);
  await answer('draft', 4);
  await vi.advanceTimersByTimeAsync(REST_MS);
  expect(asked()).toEqual(['study 4']);
});

test('a point that moves on waits for no whole study, and one that comes all the same is not shown', async () => {
  const { workers, answer, asked } = handWorker();
  const study = createStudyActions({ workers });
  study.follow(at(1));
  await answer('draft', 1);
  await vi.advanceTimersByTimeAsync(REST_MS);
  study.follow(at(2));
  await vi.advanceTimersByTimeAsync(0);
  expect(asked()).toEqual(['study 1, given up', 'draft 2']);
  await answer('study', 1);
  await answer('draft', 2);
  expect(shown()).toEqual({ name: 'draft', lon: 2 });
  expect(useStudy.getState()).toMatchObject({ answer: null, problem: null });
});

test('what is let go is worked out whole at once, for those who keep it', async () => {
  const { workers, answer, asked } = handWorker();
  const study = createStudyActions({ workers });
  const kept = vi.fn();
  study.follow(at(1));
  study.ask(at(1.5), kept);
  await answer('draft', 1);
  expect(kept).not.toHaveBeenCalled();
  expect(asked()).toEqual(['study 1.5']);
  await answer('study', 1.5);
  expect(kept.mock.calls).toEqual([[{ study: { name: 'study', lon: 1.5 } }]]);
  await vi.advanceTimersByTimeAsync(2 * REST_MS);
  expect(asked()).toEqual([]);
});

test('a draft that takes long says that an old one is shown; what was dropped shows no part of itself', async () => {
  const { workers, answer, asked } = handWorker();
  const study = createStudyActions({ workers });
  study.follow(at(1));
  await answer('draft', 1);
  study.follow(at(2));
  study.follow(at(3));
  await vi.advanceTimersByTimeAsync(400);
  expect(useStudy.getState().stale).toBe(true);
  await answer('draft', 2);
  expect(useStudy.getState().stale).toBe(false);
  study.clear();
  expect(asked()).toEqual(['draft 3']);
  await answer('draft', 3);
  await vi.advanceTimersByTimeAsync(2 * REST_MS);
  expect(shown()).toBeNull();
  expect(asked()).toEqual([]);
});

test('a point that no hand moves is asked for whole at once', () => {
  const { workers, asked } = handWorker();
  createStudyActions({ workers }).ask(at(1));
  expect(asked()).toEqual(['study 1']);
});
