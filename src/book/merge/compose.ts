import { UserError } from '../../units/index.ts';
import { BOOK_VERSION, fieldsOf, readField, type TableName } from '../schema/index.ts';
import { canonical } from './canonical.ts';
import { type MergeState, recordState } from './merge-state.ts';
import { isRequired } from './plain-record.ts';
import type { Cell } from './record-state.ts';
import type { Op, Time, Update } from './update.ts';
import { heads } from './vector.ts';

/** What is to be changed of one record: fields and their new values. A record that is not there yet is made. */
export interface Change {
  readonly table: TableName;
  readonly id: string;
  readonly set: Readonly<Record<string, unknown>>;
}

/** An update before it has its number and its time, which the store gives it in the transaction that keeps it. */
export type Draft = Omit<Update, 'actor' | 'n' | 't'>;

/** Who does it, and what it is called in the history. */
export interface Author {
  readonly who: string;
  readonly device: string;
  readonly label: string;
}

/**
 * A draft of changes on what `state` shows. Values that stand already are left out; null where nothing is left. Throws a
 * `UserError` on a value that cannot be used, and where a new record lacks a field.
 */
export function composeDraft(state: MergeState, changes: readonly Change[], author: Author): Draft | null {
  const ops = changes.flatMap((change) => opsOf(state, change));
  if (ops.length === 0) return null;
  const deletes = ops.some(([, , field, value]) => field === 'deleted' && value === true);
  return { v: BOOK_VERSION, ...author, ops, ...(deletes && { after: heads(state.vector) }) };
}

function opsOf(state: MergeState, { table, id, set }: Change): Op[] {
  const { cells } = recordState(state, table, id);
  const ops: Op[] = [];
  for (const [field, given] of Object.entries(set)) {
    const value = readField(table, id, field, given, 'This change');
    const cell = cells[field];
    // A deletion is written again even where it stands: it says that its writer has seen what contests it.
    if ((field === 'deleted' && value === true) || !standsAlready(cell, value))
      ops.push([table, id, field, value, overOf(cell)]);
  }
  const missing = fieldsOf(table).find(
    (field) => isRequired(table, field) && !cells[field]?.writes.length && !Object.hasOwn(set, field),
  );
  if (missing !== undefined && ops.length > 0) {
    throw new UserError('change-missing', `This change: ${table} "${id}" has no ${missing}; give one.`);
  }
  return ops;
}

/** Ids of every write that a cell shows. */
export const overOf = (cell: Cell | undefined): string[] => (cell?.writes ?? []).map(({ by }) => by.id);

const standsAlready = (cell: Cell | undefined, value: unknown): boolean => {
  if (!cell || cell.writes.length === 0) return false;
  const text = canonical(value);
  return cell.writes.every((write) => canonical(write.value) === text);
};

/** The draft as the update that is kept. */
export const finish = (draft: Draft, actor: string, n: number, t: Time): Update => {
  const { v, who, device, label, ops, ...rest } = draft;
  return { v, actor, n, t, who, device, label, ops, ...rest };
};
