import type { TableName } from '../schema/index.ts';
import { BOOK_VERSION } from '../schema/index.ts';
import { canonical } from './canonical.ts';
import { type Author, type Draft, overOf } from './compose.ts';
import { type MergeState, recordState } from './merge-state.ts';
import { initialValue, isRequired } from './plain-record.ts';
import type { RecordState } from './record-state.ts';
import { currentOps } from './upcast.ts';
import { type Op, type Update, updateId } from './update.ts';
import { heads } from './vector.ts';

/** A field that stays as it is because somebody has changed it since. */
export interface KeptField {
  readonly table: TableName;
  readonly id: string;
  readonly field: string;
  readonly who: string;
}

/** How a group of updates is taken back: the updates to write, one or more, and what stays. */
export interface Inversion {
  readonly drafts: readonly Draft[];
  readonly kept: readonly KeptField[];
}

/** Ids of the updates that `invert` must be able to look up. */
export const neededToInvert = (group: readonly Update[]): string[] => [
  ...new Set(group.flatMap(({ ops }) => ops.flatMap(([, , , , over]) => over))),
];

/**
 * Takes back the updates of `group`: every field whose only writes are theirs gets back what they replaced (`earlier`: those
 * updates by their ids). What they replaced several values with is opened as a choice again; a record that they made is deleted.
 * `as` says whether the drafts undo or redo.
 */
export function invert(
  state: MergeState,
  group: readonly Update[],
  earlier: ReadonlyMap<string, Update>,
  as: 'undoes' | 'redoes',
  author: Author,
): Inversion {
  const own = new Set(group.map(updateId));
  const ops: Op[][] = [[]];
  const kept: KeptField[] = [];
  for (const [record, fields] of touched(state, group)) {
    const { table, id } = record;
    const other = (field: string) => record.cells[field]?.writes.find(({ by }) => !own.has(by.id))?.by.who;
    const made = [...fields].some(([field, over]) => over.length === 0 && isRequired(table, field));
    if (made) {
      const changed = Object.keys(record.cells).find((field) => other(field) !== undefined);
      if (changed === undefined) ops[0]!.push([table, id, 'deleted', true, overOf(record.cells.deleted)]);
      else kept.push({ table, id, field: changed, who: other(changed)! });
      continue;
    }
    for (const [field, over] of fields) {
      const cell = record.cells[field];
      const who = other(field);
      if (who !== undefined || !cell?.writes.length) {
        kept.push({ table, id, field, who: who ?? author.who });
        continue;
      }
      valuesOf(table, id, field, over, earlier).forEach((value, i) => {
        ops[i] ??= [];
        ops[i].push([table, id, field, value, overOf(cell)]);
      });
    }
  }
  const draft = (part: Op[]): Draft => ({
    v: BOOK_VERSION,
    ...author,
    ops: part,
    [as]: updateId(group[0]!),
    ...(part.some(([, , field, value]) => field === 'deleted' && value === true) && { after: heads(state.vector) }),
  });
  return { drafts: ops.map(draft), kept };
}

/** The records and fields that a group wrote, with the ids that it replaced, its own left out. */
function touched(state: MergeState, group: readonly Update[]): Map<RecordState, Map<string, string[]>> {
  const own = new Set(group.map(updateId));
  const records = new Map<string, RecordState>();
  const found = new Map<RecordState, Map<string, string[]>>();
  for (const update of group) {
    for (const [table, id, field, , over] of currentOps(update, 'The history')) {
      const key = `${table}/${id}`;
      const record = records.get(key) ?? recordState(state, table as TableName, id);
      records.set(key, record);
      const fields = found.get(record) ?? new Map<string, string[]>();
      found.set(record, fields);
      const before = fields.get(field) ?? [];
      fields.set(field, [...before, ...over.filter((one) => !own.has(one) && !before.includes(one))]);
    }
  }
  return found;
}

/** The different values that the replaced writes gave, newest first; what the field began with where there were none. */
function valuesOf(
  table: TableName,
  id: string,
  field: string,
  over: readonly string[],
  earlier: ReadonlyMap<string, Update>,
): unknown[] {
  const values = new Map<string, unknown>();
  for (const one of over) {
    const update = earlier.get(one);
    if (!update) continue;
    const op = currentOps(update, 'The history').find(([t, i, f]) => t === table && i === id && f === field);
    if (op) values.set(canonical(op[3]), op[3]);
  }
  return values.size > 0 ? [...values.values()] : [initialValue(table, field)];
}
