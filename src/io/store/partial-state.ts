import { isTable } from '../../book/index.ts';
import { emptyState, type MergeState, type RecordState, type Update } from '../../book/merge/index.ts';
import type { DiskRead, RecordKey } from './book-disk.ts';

/** The records that updates touch, each once; those of unknown tables are left to whoever applies them. */
export function keysOf(updates: readonly Pick<Update, 'ops'>[]): RecordKey[] {
  const keys = new Map<string, RecordKey>();
  for (const { ops } of updates) {
    for (const [table, id] of ops ?? []) if (isTable(table)) keys.set(`${table}/${id}`, [table, id]);
  }
  return [...keys.values()];
}

/** A state that holds only the records that a transaction read: enough to apply what touches no other. */
export function partialState({ meta, records }: DiskRead, keys: readonly RecordKey[]): MergeState {
  const state: MergeState = { ...emptyState(), vector: meta?.vector ?? new Map() };
  keys.forEach(([table, id], i) => {
    const record = records[i];
    if (record) state.records.get(table)!.set(id, record);
  });
  return state;
}

/** All records of a partial state. */
export const touchedRecords = (state: MergeState): RecordState[] =>
  [...state.records.values()].flatMap((table) => [...table.values()]);
