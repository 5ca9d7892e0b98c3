import { expect, it } from 'vitest';
import { type ModelTables, modelTables } from '../../src/descent/estimate/model-tables.ts';
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
  const tables = (count: number, most?: number) => keptTables(model, knots(count), guesses, most);
  const [first, second] = [tables(20), tables(21)];
  expect(tables(20)).toBe(first);
  // Nothing but the newest fits.
  const third = tables(22, 1);
  expect(tables(22)).toBe(third);
  expect(tables(20)).not.toBe(first);
  expect(tables(21)).not.toBe(second);
});

it('lets go no more than it must', () => {
  const model = { ...slopeModel };
  const tables = (count: number, most?: number) => keptTables(model, knots(count), guesses, most);
  const numbers = ({ levels }: ModelTables) =>
    levels.reduce((sum, level) => sum + level.ramps.length + level.baseRamps.length + level.whitening.rows.length, 0);
  const [first, second] = [tables(20), tables(21)];
  tables(20);
  const third = modelTables(slopeModel, knots(22), guesses);
  // The second is the longest unused by now.
  tables(22, numbers(first) + numbers(third));
  expect(tables(20)).toBe(first);
  expect(tables(21)).not.toBe(second);
});
