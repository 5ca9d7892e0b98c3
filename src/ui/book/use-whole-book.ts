import { useCallback, useSyncExternalStore } from 'react';
import { type Book, type RecordOf, type TableName, tableNames } from '../../book/index.ts';
import { useBook } from '../state/index.ts';

const nothing = (): void => undefined;

/** The whole book as it stands, deleted records and contested fields included; null before one is open. */
export function useWholeBook(): Book | null {
  const opened = useBook((state) => state.opened);
  const subscribe = useCallback((changed: () => void) => opened?.subscribe(changed) ?? nothing, [opened]);
  return useSyncExternalStore(subscribe, () => opened?.book() ?? null);
}

/** Every table's name, for what runs over all of them. */
export const everyTable: readonly TableName[] = tableNames;

/** What a record is called by people. */
export function recordWords<T extends TableName>(table: T, record: RecordOf<T>): string {
  if (table === 'ropes') return 'rope';
  if (table === 'mileMarkers') return `mile ${(record as RecordOf<'mileMarkers'>).post.mile}`;
  if (table === 'settings') return 'the book';
  const { id, name, unit, resource, heading, caption, kind, by } = record as Record<string, unknown>;
  const found = [name, unit, resource, heading, caption, kind, by].find(
    (word) => typeof word === 'string' && word !== '',
  );
  return typeof found === 'string' ? found : String(id);
}
