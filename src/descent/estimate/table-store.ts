import { type ErrorGuess, type ModelTables, modelTables } from './model-tables.ts';
import type { Knots } from './roughness-levels.ts';
import type { SlopeModel } from './slope-model.ts';

/** Largest total of kept table entries, numbers of 8 bytes: about 100 MB. */
const MOST_NUMBERS = 12_500_000;

interface Kept {
  readonly tables: ModelTables;
  readonly numbers: number;
}

const stores = new WeakMap<SlopeModel, Map<string, Kept>>();

/**
 * The tables of a model for a length and an error, made once and kept: they depend on no height, so neighbouring studies
 * share them. The longest unused are let go beyond `most` numbers of 8 bytes.
 */
export function keptTables(
  model: SlopeModel,
  knots: Knots,
  guesses: readonly ErrorGuess[],
  most = MOST_NUMBERS,
): ModelTables {
  let store = stores.get(model);
  if (!store) {
    store = new Map();
    stores.set(model, store);
  }
  const key = JSON.stringify([knots.count, knots.knotM, knots.windowM, guesses]);
  const found = store.get(key);
  if (found) {
    store.delete(key);
    store.set(key, found);
    return found.tables;
  }
  const tables = modelTables(model, knots, guesses);
  store.set(key, { tables, numbers: sizeOf(tables) });
  let total = 0;
  for (const kept of store.values()) total += kept.numbers;
  for (const [oldest, { numbers }] of store) {
    if (total <= most || store.size === 1) break;
    store.delete(oldest);
    total -= numbers;
  }
  return tables;
}

const sizeOf = ({ levels }: ModelTables): number =>
  levels.reduce(
    (sum, { ramps, baseRamps, whitening }) => sum + ramps.length + baseRamps.length + whitening.rows.length,
    0,
  );
