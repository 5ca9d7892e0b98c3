import { expect, test } from 'vitest';
import { latest } from '../../src/workers/index.ts';

/** A run whose requests are answered by hand. */
function byHand() {
  const started: { request: number; resolve(answer: string): void; reject(error: unknown): void }[] = [];
  const answers: string[] = [];
  const errors: unknown[] = [];
  const asks = latest<number, string>(
    (request) => new Promise((resolve, reject) => started.push({ request, resolve, reject })),
    (answer, request) => answers.push(`${request}: ${answer}`),
    (error, request) => errors.push([request, error]),
  );
  return { started, answers, errors, asks };
}

const turn = () => new Promise((resolve) => setTimeout(resolve, 0));

test('one runs, one waits, and a newer one takes the waiting place', async () => {
  const { started, answers, asks } = byHand();
  for (const request of [1, 2, 3, 4]) asks.ask(request);
  expect(started.map(({ request }) => request)).toEqual([1]);
  started[0]!.resolve('a');
  await turn();
  expect(started.map(({ request }) => request)).toEqual([1, 4]);
  started[1]!.resolve('b');
  await turn();
  expect(answers).toEqual(['1: a', '4: b']);
  asks.ask(5);
  expect(started.at(-1)!.request).toBe(5);
});

test('an error is told and does not hold up the next', async () => {
  const { started, answers, errors, asks } = byHand();
  asks.ask(1);
  asks.ask(2);
  started[0]!.reject('broken');
  await turn();
  started[1]!.resolve('fine');
  await turn();
  expect(errors).toEqual([[1, 'broken']]);
  expect(answers).toEqual(['2: fine']);
});

test('what was dropped is not told, and later asks still run', async () => {
  const { started, answers, errors, asks } = byHand();
  asks.ask(1);
  asks.ask(2);
  asks.drop();
  asks.ask(3);
  started[0]!.resolve('old');
  await turn();
  expect(started.map(({ request }) => request)).toEqual([1, 3]);
  started[1]!.resolve('new');
  await turn();
  expect(answers).toEqual(['3: new']);
  expect(errors).toEqual([]);
});
