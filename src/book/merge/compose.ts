import { UserError } from '../../units/index.ts';
import { BOOK_VERSION, fieldsOf, readField, type TableName } from '../schema/index.ts';
import { canonical } from './canonical.ts';
import { type MergeState, recordState } from './merge-state.ts';
import { isRequired } from './plain-record.ts';
import type { Cell } from './record-state.ts';
import { type Op, type Time, type Update, updateId } from './update.ts';
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

/** Whether an update's values were on the screen when the change was made. */
export type Shown = (updateId: string) => boolean;

/**
 * A draft of changes on what `state` shows, the updates that `shown` denies left out: what they gave stays beside the change.
 * Values that stand already are left out; null where nothing is left. Throws a `UserError` on a value that cannot be used, and
 * where a new record lacks a field.
 */
export function composeDraft(
  state: MergeState,
  changes: readonly Change[],
  author: Author,
  shown: Shown = () => true,
): Draft | null {
  const ops = changes.flatMap((change) => opsOf(state, change, shown));
  if (ops.length === 0) return null;
  const deletes = ops.some(([, , field, value]) => field === 'deleted' && value === true);
  return { v: BOOK_VERSION, ...author, ops, ...(deletes && { after: seen(state, shown) }) };
}

/** How much of each actor was on the screen. */
const seen = (state: MergeState, shown: Shown): [string, number][] =>
  heads(state.vector).map(([actor, n]) => {
    let last = n;
    while (last > 0 && !shown(updateId({ actor, n: last }))) last -= 1;
    return [actor, last];
  });

function opsOf(state: MergeState, { table, id, set }: Change, shown: Shown): Op[] {
  const { cells } = recordState(state, table, id);
  const ops: Op[] = [];
  for (const [field, given] of Object.entries(set)) {
    const value = readField(table, id, field, given, 'This change');
    const cell = cells[field];
    // A deletion is written again even where it stands: it says that its writer has seen what contests it.
    if ((field === 'deleted' && value === true) || !standsAlready(cell, value))
      ops.push([table, id, field, value, overOf(cell).filter(shown)]);
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
