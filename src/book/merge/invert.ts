import { BOOK_VERSION, type TableName } from '../schema/index.ts';
import { canonical } from './canonical.ts';
import { type Author, type Draft, overOf } from './compose.ts';
import { type MergeState, recordState } from './merge-state.ts';
import { initialValue, isRequired } from './plain-record.ts';
import { type RecordState, recordKey } from './record-state.ts';
import { currentOps } from './upcast.ts';
import { type Op, type Update, updateId } from './update.ts';
import { heads } from './vector.ts';

/** A field that stays as it is because somebody has changed it since. */
export interface KeptField {
  readonly table: TableName;
  readonly id: string;
  readonly field: string;
  /** Whose value stands. */
  readonly who: string;
}

/** How a group of updates is taken back: the updates to write, one or more, and what stays. */
export interface Inversion {
  readonly drafts: readonly Draft[];
  readonly kept: readonly KeptField[];
}

/** Updates that `invert` must be able to look up, by id. */
export const neededToInvert = (group: readonly Update[]): string[] => [
  ...new Set(group.flatMap(({ ops }) => ops.flatMap(([, , , , over]) => over))),
];

/**
 * Takes back the updates of `group`: every field on which only their values stand gets back what they replaced (`earlier`: those
 * updates by id). Where they had replaced several values, these become a choice again; a record that they made is deleted. `as`
 * says whether the drafts undo or redo.
 */
export function invert(
  state: MergeState,
  group: readonly Update[],
  earlier: ReadonlyMap<string, Update>,
  as: 'undoes' | 'redoes',
  author: Author,
): Inversion {
  const ops: Op[][] = [[]];
  const kept: KeptField[] = [];
  for (const { record, fields } of touched(state, group)) {
    const { table, id } = record;
    const other = (field: string, own?: ReadonlySet<string>): string | undefined =>
      record.cells[field]?.writes.find(({ by, standsFor }) => !own?.has(standsFor ?? by.id))?.by.who;
    const made = [...fields].some(([field, { over }]) => over.length === 0 && isRequired(table, field));
    if (made) {
      const changed = Object.keys(record.cells).find(
        (field) => other(field, fields.get(field)?.own) !== undefined && !isAtFirst(record, field),
      );
      if (changed === undefined) ops[0]!.push([table, id, 'deleted', true, overOf(record.cells.deleted)]);
      else kept.push({ table, id, field: changed, who: other(changed, fields.get(changed)?.own)! });
      continue;
    }
    for (const [field, { over, own }] of fields) {
      const who = other(field, own);
      if (who !== undefined) {
        kept.push({ table, id, field, who });
        continue;
      }
      const now = overOf(record.cells[field]);
      replaced(table, id, field, over, earlier).forEach(({ value, from }, i) => {
        ops[i] ??= [];
        ops[i].push(from === null ? [table, id, field, value, now] : [table, id, field, value, now, from]);
      });
    }
  }
  return { drafts: ops.map((part) => draftOf(part, updateId(group[0]!), as, author, state)), kept };
}

/** True where a field stands as a new record has it, as after an edit that was taken back: nothing of it can be lost. */
function isAtFirst({ table, cells }: RecordState, field: string): boolean {
  if (isRequired(table, field)) return false;
  const first = canonical(initialValue(table, field));
  return cells[field]!.writes.every(({ value }) => canonical(value) === first);
}

function draftOf(ops: Op[], target: string, as: 'undoes' | 'redoes', author: Author, state: MergeState): Draft {
  const deletes = ops.some(([, , field, value]) => field === 'deleted' && value === true);
  return { v: BOOK_VERSION, ...author, ops, [as]: target, ...(deletes && { after: heads(state.vector) }) };
}

interface Touched {
  readonly record: RecordState;
  /** `over`: ids that the group replaced, its own left out; `own`: the ids under which its values stand. */
  readonly fields: Map<string, { over: string[]; own: Set<string> }>;
}

function touched(state: MergeState, group: readonly Update[]): Iterable<Touched> {
  const ids = new Set(group.map(updateId));
  const found = new Map<string, Touched>();
  for (const update of group) {
    for (const [table, id, field, , over, standsFor] of currentOps(update, 'The history')) {
      const key = recordKey(table, id);
      const record = found.get(key) ?? { record: recordState(state, table as TableName, id), fields: new Map() };
      found.set(key, record);
      const entry = record.fields.get(field) ?? { over: [], own: new Set() };
      record.fields.set(field, entry);
      entry.own.add(standsFor ?? updateId(update));
      for (const one of over) if (!ids.has(one) && !entry.over.includes(one)) entry.over.push(one);
    }
  }
  return found.values();
}

/** The different values that the replaced writes gave and whose they are; what the field began with where there were none. */
function replaced(
  table: TableName,
  id: string,
  field: string,
  over: readonly string[],
  earlier: ReadonlyMap<string, Update>,
): { value: unknown; from: string | null }[] {
  const values = new Map<string, { value: unknown; from: string }>();
  for (const one of over) {
    const update = earlier.get(one);
    const op = update && currentOps(update, 'The history').find(([t, i, f]) => t === table && i === id && f === field);
    if (op) values.set(canonical(op[3]), { value: op[3], from: op[5] ?? one });
  }
  return values.size > 0 ? [...values.values()] : [{ value: initialValue(table, field), from: null }];
}
