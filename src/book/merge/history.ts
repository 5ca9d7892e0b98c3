import { compareTimes } from './hybrid-clock.ts';
import { recordKey } from './record-state.ts';
import { isNewer } from './upcast.ts';
import { type Time, type Update, updateId } from './update.ts';

/** Who set a field of a record to what, and when by the clock of their device. */
export interface HistoryEntry {
  readonly update: string;
  readonly t: Time;
  readonly who: string;
  readonly device: string;
  readonly label: string;
  readonly fields: readonly { readonly field: string; readonly value: unknown }[];
}

/** What happened to a record, oldest first by the clocks. */
export function historyOf(table: string, id: string, log: Iterable<Update>): HistoryEntry[] {
  const key = recordKey(table, id);
  const found: HistoryEntry[] = [];
  for (const update of log) {
    if (isNewer(update)) continue;
    const fields = update.ops
      .filter((op) => recordKey(op[0], op[1]) === key)
      .map(([, , field, value]) => ({ field, value }));
    const { t, who, device, label } = update;
    if (fields.length > 0) found.push({ update: updateId(update), t, who, device, label, fields });
  }
  return found.sort((a, b) => compareTimes(a.t, b.t) || (a.update < b.update ? -1 : 1));
}
