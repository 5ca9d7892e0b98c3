import { UserError } from '../../units/index.ts';
import { BOOK_VERSION, isTable, readField } from '../schema/index.ts';
import { type Op, type Update, updateId } from './update.ts';

/** Takes one operation of a version to the next: none, one or several. Total and pure, the `over` ids kept. */
export type Upcast = (op: Op) => readonly Op[];

/** `upcasts[i]` takes version i + 1 to version i + 2; one for every migration of the plain book. */
export const upcasts: readonly Upcast[] = [];

/** True for an update of a newer schema: it is kept and passed on, and applied once the program is newer. */
export const isNewer = (update: Update, version: number = BOOK_VERSION): boolean => update.v > version;

/**
 * The operations of an update in this program's schema, each value checked. The update itself is never rewritten. Throws a
 * `UserError` that names the update's device, the table, the record and the field.
 */
export function currentOps(update: Update, from: string, steps: readonly Upcast[] = upcasts): Op[] {
  let ops = update.ops;
  for (const step of steps.slice(update.v - 1)) ops = ops.flatMap(step);
  return ops.map(([table, id, field, value, ...rest]): Op => {
    if (!isTable(table)) {
      throw new UserError(
        'update-table',
        `${from}: update ${updateId(update)} writes to a table "${table.slice(0, 60)}" that a book does not have; take another copy.`,
      );
    }
    return [table, id, field, readField(table, id, field, value, `${from}, update ${updateId(update)}`), ...rest];
  });
}
