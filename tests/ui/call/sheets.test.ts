import { expect, test } from 'vitest';
import { sheets } from '../../../src/ui/call/sheets.ts';
import { UserError } from '../../../src/units/index.ts';
import type { WorkerClient } from '../../../src/workers/index.ts';
import type { SheetFunctions, SheetInputs } from '../../../src/workers/sheet/index.ts';

const of = {} as SheetInputs;

/** A worker that answers, or fails with an error. */
const worker = (error: Error | null): WorkerClient<SheetFunctions> => ({
  call: (() => (error ? Promise.reject(error) : Promise.resolve({ phone: '<svg/>' }))) as never,
  fail() {},
});

test('one worker draws all sheets; a lost one is told of, and the next question starts another', async () => {
  const given = [worker(new UserError('worker-lost', 'Gone.')), worker(null)];
  let starts = 0;
  const drawer = sheets(async () => given[starts++]!);
  drawer.warm();
  await expect(drawer.draw(of, ['phone'])).rejects.toThrow('Gone.');
  expect(starts).toBe(1);
  expect(await drawer.draw(of, ['phone'])).toEqual({ phone: '<svg/>' });
  await drawer.draw(of, ['phone']);
  expect(starts).toBe(2);
});

test('a failure of one sheet keeps the worker; a worker that could not be loaded is asked for again', async () => {
  let starts = 0;
  const failing = sheets(async () => {
    starts++;
    if (starts === 1) throw new Error('not loaded');
    return worker(new Error('bad study'));
  });
  await expect(failing.draw(of, ['phone'])).rejects.toThrow('not loaded');
  await expect(failing.draw(of, ['phone'])).rejects.toThrow('bad study');
  await expect(failing.draw(of, ['phone'])).rejects.toThrow('bad study');
  expect(starts).toBe(2);
});
