import { UserError } from '../../units/index.ts';
import type { TableName } from '../schema/index.ts';
import { canonical } from './canonical.ts';
import { type MergeState, recordState } from './merge-state.ts';
import { applyToRecord, type RecordState, recordKey, type Stamp } from './record-state.ts';
import { currentOps, isNewer } from './upcast.ts';
import { type Op, type Update, updateId } from './update.ts';
import { holds, note } from './vector.ts';

/**
 * Applies an update to a state, in any order and any number of times. 'known': it had been applied. 'newer': it is noted as held,
 * its operations wait for a newer program. Throws a `UserError` before anything changed where a value cannot be used.
 */
export function applyUpdate(state: MergeState, update: Update, from: string): 'applied' | 'known' | 'newer' {
  if (holds(state.vector, updateId(update))) return 'known';
  if (isNewer(update)) {
    note(state.vector, update.actor, update.n);
    return 'newer';
  }
  for (const record of applied(update, currentOps(update, from), state)) {
    state.records.get(record.table)!.set(record.id, record);
  }
  note(state.vector, update.actor, update.n);
  return 'applied';
}

/** The records that an update touches, with it applied. The state stays as it is. */
function applied(update: Update, ops: readonly Op[], state: MergeState): RecordState[] {
  const by = stampOf(update);
  const held = (id: string): boolean => holds(state.vector, id);
  const byRecord = new Map<string, Op[]>();
  for (const op of ops) {
    const key = recordKey(op[0], op[1]);
    const own = byRecord.get(key);
    if (own) own.push(op);
    else byRecord.set(key, [op]);
  }
  return [...byRecord.values()].map((own) => {
    const [table, id] = own[0]!;
    return applyToRecord(recordState(state, table as TableName, id), own, by, held);
  });
}

function stampOf(update: Update): Stamp {
  const { t, who, device, after } = update;
  return { id: updateId(update), t, who, device, ...(after && { after }) };
}

/** Throws where two updates with one id differ: two copies of the book write under one device's name. */
export function requireSame(kept: Update, came: Update, from: string): void {
  if (canonical(kept) === canonical(came)) return;
  throw new UserError(
    'update-clash',
    `${from}: update ${updateId(came)} of "${String(came.device).slice(0, 60)}" is not the one that this book holds under that number; one device's book was copied and both copies were used: keep both files and start the copy as a new device.`,
  );
}
