import { FILES, LATER_DEMO, type TableName, tableNames } from '../../book/index.ts';
import {
  applyUpdate,
  type Change,
  composeDraft,
  emptyState,
  finish,
  isDeleted,
  type MergeState,
  partsOfId,
  type RecordState,
  snapshotOf,
  type Update,
} from '../../book/merge/index.ts';
import { newId } from './new-id.ts';

/** Lists that count whole: where a person has written one of their own nothing is added to it or to what belongs to it. */
const wholeLists: Partial<Record<TableName, TableName>> = {
  fleet: 'fleet',
  kits: 'kits',
  ropes: 'kits',
  kitItems: 'kits',
  responseAreas: 'responseAreas',
  arrivals: 'responseAreas',
  responseRows: 'responseRows',
};

/**
 * What a demo lacks that an earlier version began (`held`), out of the demo's book file (`file`), as one update of a writer of its
 * own. A record that a person has changed or deleted stays as it is, and nothing is added to a deleted site.
 */
export function laterDemo(held: readonly Update[], file: readonly Update[]): Update[] {
  const state = stateOf(held);
  const { tables } = snapshotOf(stateOf(file));
  const isGone = (siteId: unknown): boolean => {
    const site = state.records.get('sites')!.get(String(siteId));
    return site !== undefined && isDeleted(site);
  };
  const changes = tableNames.flatMap((table): Change[] => {
    const list = wholeLists[table];
    if (list && state.records.get(list)!.size > 0) return [];
    return tables[table].flatMap((record) => {
      const { id, deleted: _, ...set } = record as { id: string; deleted: boolean } & Record<string, unknown>;
      const here = state.records.get(table)!.get(id);
      return (here && isPersons(here)) || isGone(set.siteId) ? [] : [{ table, id, set }];
    });
  });
  const last = file.at(-1);
  const draft =
    last && composeDraft(state, changes, { who: last.who, device: last.device, label: 'Brought the demo’s book' });
  return draft ? [finish(draft, newId(LATER_DEMO), 1, last.t)] : [];
}

/** True where anybody but the files wrote any of it. */
const isPersons = ({ cells }: RecordState): boolean =>
  Object.values(cells).some(({ writes }) => writes.some(({ by }) => partsOfId(by.id).actor !== FILES));

function stateOf(updates: readonly Update[]): MergeState {
  const state = emptyState();
  for (const update of updates) applyUpdate(state, update, 'The demo');
  return state;
}
