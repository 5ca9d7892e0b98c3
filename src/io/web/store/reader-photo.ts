import { openDatabase } from './open-database.ts';
import { inTransaction } from './transaction.ts';

/** A photo's bytes out of the browser's book of a name, by their hash, without the merge; null where they are not on this device. */
export async function readerPhoto(name: string, hash: string): Promise<Blob | null> {
  const database = await openDatabase(name);
  try {
    return await inTransaction<Blob | null>(database, ['blobs'], 'readonly', (at) => {
      at.when(at.store('blobs').get(hash), (blob) => at.give(blob ?? null));
    });
  } finally {
    database.close();
  }
}
