import * as v from 'valibot';
import { fieldsOf, type RecordOf, type TableName, tables } from '../schema/index.ts';
import type { RecordState } from './record-state.ts';

interface Field {
  readonly name: string;
  readonly schema: v.GenericSchema;
  readonly required: boolean;
}
const fields = new Map<TableName, readonly Field[]>();

/**
 * A record as people read it: the newest value of each field, what may be missing filled in. Null while a field that must be there
 * has not come yet. `deleted` is told by the caller, who knows what belongs to the record.
 */
export function plainRecord<T extends TableName>(
  state: RecordState & { table: T },
  deleted: boolean,
): RecordOf<T> | null {
  const record: Record<string, unknown> = { id: state.id };
  for (const { name, schema, required } of fieldList(state.table)) {
    const newest = state.cells[name]?.writes[0];
    if (!newest && required) return null;
    record[name] = newest ? newest.value : v.getDefault(schema);
  }
  record.deleted = deleted;
  return record as RecordOf<T>;
}

/** The value that a field has before anybody gives one; undefined where it must be given. */
export const initialValue = (table: TableName, field: string): unknown =>
  v.getDefault((tables[table].entries as Record<string, v.GenericSchema>)[field]!);

/** True where a record cannot be without the field. */
export const isRequired = (table: TableName, field: string): boolean =>
  fieldList(table).some(({ name, required }) => name === field && required);

function fieldList(table: TableName): readonly Field[] {
  let list = fields.get(table);
  if (!list) {
    const entries = tables[table].entries as Record<string, v.GenericSchema>;
    list = fieldsOf(table).map((name) => ({
      name,
      schema: entries[name]!,
      required: entries[name]!.type !== 'optional',
    }));
    fields.set(table, list);
  }
  return list;
}
