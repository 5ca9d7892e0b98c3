import type { TableName } from '../schema/index.ts';
import type { Op, Time } from './update.ts';

/** Whose write it is. Shared by all writes of an update in a record. */
export interface Stamp {
  readonly id: string;
  readonly t: Time;
  readonly who: string;
  readonly device: string;
  /** What its writer had seen, by actor; in deletions alone. */
  readonly after?: readonly (readonly [actor: string, n: number])[];
}

export interface Write {
  readonly value: unknown;
  readonly by: Stamp;
  /** The update whose value an undo or redo brought back. */
  readonly standsFor?: string;
}

/** A field: the writes that no other names, newest first, and the ids named before they came. */
export interface Cell {
  readonly writes: readonly Write[];
  readonly gone?: readonly string[];
}

/** A record as its updates left it. Plain: a store keeps it as it is. Never changed in place. */
export interface RecordState {
  readonly table: TableName;
  readonly id: string;
  readonly cells: Readonly<Record<string, Cell>>;
}

/** Table and id as one text. */
export const recordKey = (table: string, id: string): string => `${table}/${id}`;

/**
 * A record with one update's operations on it applied. `held` tells whether an update has been applied before. The caller sees to
 * it that no update is applied twice.
 */
export function applyToRecord(
  record: RecordState,
  ops: readonly Op[],
  by: Stamp,
  held: (id: string) => boolean,
): RecordState {
  const cells: Record<string, Cell> = { ...record.cells };
  for (const [, , field, value, over, standsFor] of ops) {
    const write = standsFor === undefined ? { value, by } : { value, by, standsFor };
    cells[field] = put(cells[field] ?? { writes: [] }, write, over, held);
  }
  return { ...record, cells };
}

function put(cell: Cell, write: Write, over: readonly string[], held: (id: string) => boolean): Cell {
  const own = write.by.id;
  const writes = cell.writes.filter(({ by }) => !over.includes(by.id));
  const gone = (cell.gone ?? []).filter((id) => id !== own);
  for (const id of over) if (!held(id) && !gone.includes(id)) gone.push(id);
  // A write that a later one named before it came is born replaced.
  if (!cell.gone?.includes(own)) {
    writes.push(write);
    writes.sort((a, b) => newestFirst(a.by, b.by));
  }
  return gone.length > 0 ? { writes, gone } : { writes };
}

/** Newest first by the clocks; where they agree, by id, so that every device has the same order. */
export const newestFirst = (a: Stamp, b: Stamp): number =>
  b.t[0] - a.t[0] || b.t[1] - a.t[1] || (a.id < b.id ? 1 : a.id > b.id ? -1 : 0);
