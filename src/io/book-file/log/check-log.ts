import { tableNames } from '../../../book/index.ts';
import { canonical, snapshotOf, type Update } from '../../../book/merge/index.ts';
import { UserError } from '../../../units/index.ts';
import type { BookFile } from '../read-book-file.ts';
import { readLog, stateOf } from './read-log.ts';

/**
 * The updates of a whole book file, after checking that its plain book is what they make. Throws a `UserError` for a reading copy,
 * for a log that cannot be read, and where the two differ (named by the first record).
 */
export function checkLog(file: BookFile, name: string): Map<string, Update> {
  if (file.log === null) {
    throw new UserError(
      'log-none',
      `${name} is a reading copy without the history of its edits, so it cannot be merged; ask for a whole book file.`,
    );
  }
  const updates = readLog(file.log, name);
  const made = snapshotOf(stateOf(updates.values(), name));
  for (const table of tableNames) {
    const kept = new Map(file.book.tables[table].map((record) => [record.id, record]));
    const wanted = new Map(made.tables[table].map((record) => [record.id, record]));
    const id = [...wanted.keys(), ...kept.keys()].find(
      (one) => canonical(kept.get(one)) !== canonical(wanted.get(one)),
    );
    if (id !== undefined) {
      throw new UserError(
        'log-differs',
        `${name} has ${table} "${id}" otherwise in its plain book than in its log; take another copy of the book.`,
      );
    }
  }
  return updates;
}
