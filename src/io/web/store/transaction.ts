import type { StoreName } from './open-database.ts';
import { storageError } from './storage-error.ts';

/** What a piece of work has at hand inside its transaction. */
export interface Work<T> {
  readonly store: (name: StoreName) => IDBObjectStore;
  /** Runs `step` when a request has succeeded; what it throws undoes the transaction. */
  readonly when: <R>(request: IDBRequest<R>, step: (result: R) => void) => void;
  /** Sets the answer. */
  readonly give: (answer: T) => void;
}

/**
 * Runs a transaction, strictly durable where it writes; resolves on `complete` with what was given. Rejects with a `UserError`
 * where it is undone: the reason stands in the transaction's own error, a full disk raises no request's error.
 */
export function inTransaction<T>(
  database: IDBDatabase,
  stores: readonly StoreName[],
  mode: IDBTransactionMode,
  work: (at: Work<T>) => void,
): Promise<T> {
  return new Promise((resolve, reject) => {
    let answer: T;
    let problem: unknown;
    try {
      const transaction = database.transaction([...stores], mode, { durability: 'strict' });
      const attempt = (step: () => void): void => {
        try {
          step();
        } catch (error) {
          problem = error;
          transaction.abort();
        }
      };
      transaction.oncomplete = () => resolve(answer);
      transaction.onabort = () => reject(storageError(problem ?? transaction.error));
      attempt(() =>
        work({
          store: (name) => transaction.objectStore(name),
          when: (request, step) => {
            request.onsuccess = () => attempt(() => step(request.result));
          },
          give: (given) => {
            answer = given;
          },
        }),
      );
    } catch (cause) {
      reject(storageError(cause));
    }
  });
}
