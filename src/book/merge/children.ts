import { fieldsOf, type TableName, tableNames } from '../schema/index.ts';
import type { MergeState } from './merge-state.ts';
import { type RecordState, recordKey } from './record-state.ts';

const owners: readonly (readonly [field: string, table: TableName])[] = [
  ['siteId', 'sites'],
  ['kitId', 'kits'],
  ['areaId', 'responseAreas'],
  ['routeId', 'routes'],
];
/** Tables whose records belong to records of another; a site only lies on its route. */
const owned = tableNames.flatMap((table) => {
  const owner = table === 'sites' ? undefined : owners.find(([field]) => fieldsOf(table).includes(field));
  return owner ? [{ table, field: owner[0], owner: owner[1] }] : [];
});

/** Records by the record that they belong to: "table/id" of the owner → its records. */
export function childrenByOwner(state: MergeState): Map<string, RecordState[]> {
  const found = new Map<string, RecordState[]>();
  for (const { table, field, owner } of owned) {
    for (const record of state.records.get(table)!.values()) {
      for (const { value } of record.cells[field]?.writes ?? []) {
        const key = recordKey(owner, String(value));
        const list = found.get(key);
        if (list) list.push(record);
        else found.set(key, [record]);
      }
    }
  }
  return found;
}
