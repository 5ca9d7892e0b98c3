import { type Update, updateId } from '../../../book/merge/index.ts';
import { UserError } from '../../../units/index.ts';

/**
 * Lines of a log: one update each as JSON, by device and number. Without `crashes`, the updates that only write crash records stay
 * behind; the rest is as it was, since an update never changes. Throws a `UserError` where an update holds crash records
 * together with others.
 */
export function logLines(updates: Iterable<Update>, { crashes }: { readonly crashes: boolean }): string[] {
  const sorted = [...updates].sort((a, b) => (a.actor < b.actor ? -1 : a.actor > b.actor ? 1 : a.n - b.n));
  return sorted.filter((update) => crashes || !isOfCrashes(update)).map((update) => JSON.stringify(update));
}

function isOfCrashes(update: Update): boolean {
  const ops: unknown = update.ops;
  const all = Array.isArray(ops) ? ops : [];
  const count = all.filter((op: unknown) => Array.isArray(op) && op[0] === 'crashes').length;
  if (count > 0 && count < all.length) {
    throw new UserError(
      'log-crashes',
      `Edit ${updateId(update)} holds crash records together with other records, so they cannot be left out of the log; ask for the crash records, or send a reading copy.`,
    );
  }
  return count > 0;
}
