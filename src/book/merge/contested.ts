import type { Contested, TableName } from '../schema/index.ts';
import { canonical } from './canonical.ts';
import type { Cell, RecordState, Stamp, Write } from './record-state.ts';
import { partsOfId } from './update.ts';

/** The writes of a cell whose values differ, newest first; of equal values the newest. One entry where nothing is contested. */
export function distinctWrites(cell: Cell): Write[] {
  if (cell.writes.length < 2) return [...cell.writes];
  const seen = new Set<string>();
  return cell.writes.filter(({ value }) => {
    const text = canonical(value);
    return !seen.has(text) && seen.add(text);
  });
}

/**
 * The contested fields of a record: several values that nobody chose between, or a deletion by somebody who did not know of
 * a change. `children`: the records that belong to it, whose changes a deletion may not have known of either.
 */
export function contestedFields(record: RecordState, children: readonly RecordState[] = []): Contested[] {
  const found: Contested[] = [];
  for (const [field, cell] of Object.entries(record.cells)) {
    const writes = field === 'deleted' ? deletionWrites(record, cell, children) : distinctWrites(cell);
    if (writes.length > 1) found.push(contested(record.table, record.id, field, writes));
  }
  return found;
}

/** True where a record counts as deleted: nobody says otherwise and nobody changed it without knowing of the deletion. */
export const isDeleted = (record: RecordState, children: readonly RecordState[] = []): boolean => {
  const cell = record.cells.deleted;
  return (
    cell !== undefined &&
    cell.writes.length > 0 &&
    deletionWrites(record, cell, children).every(({ value }) => value === true)
  );
};

/** What stands about a record's deletion; a change that the deletion did not know of counts as a "no". */
function deletionWrites(record: RecordState, cell: Cell, children: readonly RecordState[]): Write[] {
  const writes = distinctWrites(cell);
  const deletion = writes[0];
  if (writes.length !== 1 || deletion?.value !== true) return writes;
  const unknown = changeUnknownTo(cell.writes, [record, ...children]);
  return unknown ? [{ value: false, by: unknown }, ...writes] : writes;
}

/** The newest write, in any field but `deleted`, that not one of the deletions had seen. */
function changeUnknownTo(deletions: readonly Write[], records: readonly RecordState[]): Stamp | null {
  const known = new Map<string, number>();
  const own = new Set(deletions.map(({ by }) => by.id));
  for (const { by } of deletions)
    for (const [actor, n] of by.after ?? []) known.set(actor, Math.max(n, known.get(actor) ?? 0));
  let newest: Stamp | null = null;
  for (const record of records) {
    for (const [field, { writes }] of Object.entries(record.cells)) {
      if (field === 'deleted') continue;
      for (const { by } of writes) {
        const { actor, n } = partsOfId(by.id);
        if (own.has(by.id) || n <= (known.get(actor) ?? 0)) continue;
        if (!newest || by.t[0] > newest.t[0] || (by.t[0] === newest.t[0] && by.id > newest.id)) newest = by;
      }
    }
  }
  return newest;
}

function contested(table: TableName, id: string, field: string, writes: readonly Write[]): Contested {
  const values = writes.map(({ value, by: { who, device, t } }) => ({ value, who, device, atMs: t[0] }));
  return { table, id, field, values };
}
