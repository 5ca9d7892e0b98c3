import { UserError } from '../../../units/index.ts';

export const storeNames = ['meta', 'records', 'log', 'blobs', 'snapshot'] as const;
export type StoreName = (typeof storeNames)[number];
/** Key of the one entry of `meta` and of `snapshot`. */
export const ONLY = 'book';

/** How often an opening is tried, how long apart, and after how long without an answer it is tried again. */
const TRIES = 5;
const WAIT_MS = 200;
const SILENT_MS = 6000;

/**
 * Opens the database of a book, with its stores. Another page that needs a newer one closes this connection. A browser that has just
 * emptied a damaged database may refuse the first opening, or leave it without an answer: it is tried again.
 */
export async function openDatabase(name: string): Promise<IDBDatabase> {
  for (let left = TRIES - 1; ; left--) {
    try {
      return await openOnce(name);
    } catch (error) {
      if (left === 0 || !(error instanceof UserError) || error.code !== 'no-storage') throw error;
      await new Promise((done) => setTimeout(done, WAIT_MS));
    }
  }
}

function openOnce(name: string): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    let request: IDBOpenDBRequest;
    try {
      request = indexedDB.open(name, 1);
    } catch (cause) {
      reject(refused(cause));
      return;
    }
    let given = false;
    const silent = setTimeout(() => {
      given = true;
      reject(refused(null));
    }, SILENT_MS);
    request.onupgradeneeded = () => {
      for (const store of storeNames) request.result.createObjectStore(store);
    };
    request.onsuccess = () => {
      const database = request.result;
      clearTimeout(silent);
      if (given) {
        database.close();
        return;
      }
      database.onversionchange = () => database.close();
      resolve(database);
    };
    request.onerror = () => {
      clearTimeout(silent);
      reject(refused(request.error));
    };
  });
}

function refused(cause: unknown): UserError {
  const newer = cause instanceof DOMException && cause.name === 'VersionError';
  return newer
    ? new UserError('book-newer', 'The book on this device was kept by a newer program; load the page again.', {
        cause,
      })
    : new UserError(
        'no-storage',
        'This browser does not let the page keep a book (a private window, or storage is blocked); open it in a normal window or allow storage.',
        { cause },
      );
}
