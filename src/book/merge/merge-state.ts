import { type TableName, tableNames } from '../schema/index.ts';
import type { RecordState } from './record-state.ts';
import type { Vector } from './vector.ts';

/** What a book's updates add up to, without the updates. */
export interface MergeState {
  readonly records: ReadonlyMap<TableName, Map<string, RecordState>>;
  readonly vector: Vector;
}

export const emptyState = (): MergeState => ({
  records: new Map(tableNames.map((table) => [table, new Map()])),
  vector: new Map(),
});

/** A record's state, or one without any field. */
export const recordState = (state: MergeState, table: TableName, id: string): RecordState =>
  state.records.get(table)?.get(id) ?? { table, id, cells: {} };
