import { partsOfId, type RecordState, type Update } from '../../../book/merge/index.ts';
import type { BookDisk, DiskRead, DiskWrite, Meta, RecordKey, Snapshot } from '../../store/index.ts';
import { ONLY, openDatabase, type StoreName, storeNames } from './open-database.ts';
import { inTransaction, type Work } from './transaction.ts';

const parts: readonly StoreName[] = ['meta', 'records', 'log'];

/** The browser's disk for the book of a name; one name, one book on this origin. */
export async function webDisk(name: string): Promise<BookDisk> {
  const database = await openDatabase(name);
  const read = <T>(stores: readonly StoreName[], work: (at: Work<T>) => void): Promise<T> =>
    inTransaction(database, stores, 'readonly', work);
  return {
    transact: (want, decide) =>
      inTransaction(database, storeNames, 'readwrite', (at) =>
        readParts(at, want.records ?? [], want.log ?? [], (found) => {
          const { write, answer } = decide(found);
          writeParts(at, write);
          at.give(answer);
        }),
      ),
    readAll: () =>
      read(['meta', 'records'], ({ store, when, give }) => {
        const meta = store('meta').get(ONLY);
        when(store('records').getAll(), (records) => give({ meta: meta.result ?? null, records }));
      }),
    readRecords: (keys) => read(parts, (at) => readParts(at, keys, [], at.give)),
    readLog: async (ids) => {
      const { log } = await read<DiskRead>(parts, (at) => readParts(at, [], ids, at.give));
      return log.filter((update) => update !== undefined);
    },
    readLogFrom: (actor, n = 1) =>
      read(['log'], ({ store, when, give }) => {
        const all = actor === undefined;
        when(store('log').getAll(all ? null : IDBKeyRange.bound([actor, n], [actor, Number.MAX_SAFE_INTEGER])), give);
      }),
    readBlob: (hash) =>
      read<Blob | null>(['blobs'], ({ store, when, give }) =>
        when(store('blobs').get(hash), (blob) => give(blob ?? null)),
      ),
    blobHashes: () =>
      read<string[]>(['blobs'], ({ store, when, give }) =>
        when(store('blobs').getAllKeys(), (keys) => give(keys.map(String))),
      ),
    readSnapshot: () =>
      read<Snapshot | null>(['snapshot'], ({ store, when, give }) =>
        when(store('snapshot').get(ONLY), (snapshot) => give(snapshot ?? null)),
      ),
    close: () => database.close(),
  };
}

/** Reads meta, records and updates, then goes on inside the transaction. */
function readParts<T>(
  { store, when }: Work<T>,
  keys: readonly RecordKey[],
  ids: readonly string[],
  then: (read: DiskRead) => void,
): void {
  const records = keys.map((key): IDBRequest<RecordState | undefined> => store('records').get([...key]));
  const log = ids.map((id): IDBRequest<Update | undefined> => {
    const { actor, n } = partsOfId(id);
    return store('log').get([actor, n]);
  });
  // Requests of a transaction succeed in the order in which they were made: with the last one, all are there.
  when(store('meta').get(ONLY), (meta: Meta | undefined) =>
    then({
      meta: meta ?? null,
      records: records.map(({ result }) => result),
      log: log.map(({ result }) => result),
    }),
  );
}

function writeParts<T>({ store }: Work<T>, { meta, records, log, blobs, snapshot }: DiskWrite): void {
  for (const update of log ?? []) store('log').put(update, [update.actor, update.n]);
  for (const record of records ?? []) store('records').put(record, [record.table, record.id]);
  for (const [hash, blob] of blobs ?? []) store('blobs').put(blob, hash);
  if (snapshot) store('snapshot').put(snapshot, ONLY);
  if (meta) store('meta').put(meta, ONLY);
}
