import {
  applyUpdate,
  emptyState,
  type MergeState,
  readUpdate,
  requireSame,
  type Update,
  updateId,
} from '../../../book/merge/index.ts';
import { UserError } from '../../../units/index.ts';

/**
 * The updates of a log's lines, by their ids. The same update may stand there twice; two that differ under one id are refused. Throws a
 * `UserError` that names the file and the line.
 */
export function readLog(lines: readonly string[], file: string): Map<string, Update> {
  const updates = new Map<string, Update>();
  lines.forEach((line, i) => {
    let json: unknown;
    try {
      json = JSON.parse(line);
    } catch {
      throw new UserError('log-line', `${file}: line ${i + 1} of its log is not JSON; take another copy of the book.`);
    }
    const update = readUpdate(json, `${file}, line ${i + 1} of its log`);
    const known = updates.get(updateId(update));
    if (known) requireSame(known, update, file);
    else updates.set(updateId(update), update);
  });
  return updates;
}

/** The state that a set of updates makes; in which order does not matter. */
export function stateOf(updates: Iterable<Update>, file: string): MergeState {
  const state = emptyState();
  for (const update of updates) applyUpdate(state, update, file);
  return state;
}
