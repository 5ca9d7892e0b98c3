import { beforeEach, expect, test, vi } from 'vitest';
import type { DeskWorkers } from '../../src/ui/actions/deps.ts';
import { createStudyActions } from '../../src/ui/actions/study-actions.ts';
import { emptyStudy, newestAnswer, type OpenDistrict, useDistrict, useStudy } from '../../src/ui/state/index.ts';

/** A worker whose answers the test gives. */
function handWorker() {
  const open: { name: string; lon: number; resolve: (value: unknown) => void; reject: (error: unknown) => void }[] = [];
  const call = (name: string, { at }: { at: { lon: number } }): Promise<unknown> =>
    new Promise((resolve, reject) => open.push({ name, lon: at.lon, resolve, reject }));
  const answer = async (name: string, lon: number): Promise<void> => {
    const i = open.findIndex((one) => one.name === name && one.lon === lon);
    if (i < 0) throw new Error(`Nobody asked ${name} at ${lon}.`);
    open.splice(i, 1)[0]!.resolve({ name, lon });
    await vi.advanceTimersByTimeAsync(0);
  };
  const workers = { study: { call, fail() {} }, map: { call, fail() {} } } as unknown as DeskWorkers;
  return { workers, answer, asked: () => open.map(({ name, lon }) => `${name} ${lon}`) };
}

const at = (lon: number) => ({
  ...{ at: { lon, lat: 44 }, side: 'of the point' as const, patient: null, patients: 1, pins: {} },
});
const shown = () => newestAnswer(useStudy.getState()) as unknown as { name: string; lon: number } | null;

beforeEach(() => {
  vi.useFakeTimers();
  useStudy.setState(emptyStudy);
  useDistrict.setState({ district: {} as OpenDistrict });
  return () => vi.useRealTimers();
});

test('while a point moves its ground is shown once it is late, then the whole; quick answers show no part', async () => {
  const { workers, answer } = handWorker();
  const study = createStudyActions({ workers });
  study.follow(at(1));
  await answer('ahead', 1);
  expect(shown()).toBeNull();
  await vi.advanceTimersByTimeAsync(100);
  expect(shown()).toEqual({ name: 'ahead', lon: 1 });
  expect(useStudy.getState().answer).toBeNull();
  await answer('study', 1);
  expect(shown()).toEqual({ name: 'study', lon: 1 });
  expect(useStudy.getState()).toMatchObject({ ahead: null, working: false });

  study.follow(at(2));
  await answer('ahead', 2);
  await answer('study', 2);
  await vi.advanceTimersByTimeAsync(100);
  expect(useStudy.getState().ahead).toBeNull();
  expect(shown()).toEqual({ name: 'study', lon: 2 });
});

test('the newest of the points that wait is asked next, what was dropped shows no part of itself', async () => {
  const { workers, answer, asked } = handWorker();
  const study = createStudyActions({ workers });
  study.follow(at(1));
  study.follow(at(2));
  study.follow(at(3));
  await answer('study', 1);
  expect(asked()).toEqual(['ahead 1', 'ahead 3', 'study 3']);
  // The part of a point that is whole by now comes late, and is nobody's.
  await answer('ahead', 1);
  await vi.advanceTimersByTimeAsync(100);
  expect(shown()).toEqual({ name: 'study', lon: 1 });
  study.clear();
  await answer('ahead', 3);
  await answer('study', 3);
  await vi.advanceTimersByTimeAsync(100);
  expect(shown()).toBeNull();
});

test('only a point that moves asks for its ground ahead', () => {
  const { workers, asked } = handWorker();
  createStudyActions({ workers }).ask(at(1));
  expect(asked()).toEqual(['study 1']);
});
