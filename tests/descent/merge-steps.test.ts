import { expect, it } from 'vitest';
import { mergeSteps } from '../../src/descent/merge-steps.ts';

it('tells a wall once, at its nearest place, with its tallest height, named by who set it', () => {
  expect(
    mergeSteps([
      { distanceM: 14, heightM: 2.5, source: 'ground' },
      { distanceM: 0.4, heightM: 2.4, source: 'ground' },
      { distanceM: 0.1, heightM: 3, source: 'map' },
      { distanceM: 16, heightM: 2, source: 'mark' },
      { distanceM: 30, heightM: 1.6, source: 'ground' },
    ]),
  ).toEqual([
    { distanceM: 0.1, heightM: 3, source: 'map' },
    { distanceM: 14, heightM: 2.5, source: 'mark' },
    { distanceM: 30, heightM: 1.6, source: 'ground' },
  ]);
});
