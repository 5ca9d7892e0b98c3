import { expect, it } from 'vitest';
import { modelTables } from '../../src/descent/estimate/model-tables.ts';
import { slopeModel } from '../../src/descent/estimate/slope-model.ts';
import { keptTables } from '../../src/descent/estimate/table-store.ts';

const knots = (count: number) => ({ count, knotM: 1, windowM: 5 });
const guesses = [{ sigmaM: 0.05, weight: 1 }];

it('keeps the tables of a length and an error, and tells lengths and errors apart', () => {
  const kept = keptTables(slopeModel, knots(20), guesses);
  expect(keptTables(slopeModel, knots(20), [{ sigmaM: 0.05, weight: 1 }])).toBe(kept);
  expect(kept).toEqual(modelTables(slopeModel, knots(20), guesses));
  expect(keptTables(slopeModel, knots(21), guesses).knots.count).toBe(21);
  expect(keptTables(slopeModel, knots(20), [{ sigmaM: 0.1, weight: 1 }])).not.toBe(kept);
  expect(keptTables({ ...slopeModel }, knots(20), guesses)).not.toBe(kept);
});

it('lets the longest unused go when it holds too much', () => {
  const model = { ...slopeModel };
  const first = keptTables(model, knots(250), guesses);
  for (let count = 251; count < 270; count++) keptTables(model, knots(count), guesses);
  expect(keptTables(model, knots(250), guesses)).not.toBe(first);
});
