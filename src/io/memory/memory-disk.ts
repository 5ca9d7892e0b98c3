import type { RecordState, Update } from '../../book/merge/index.ts';
import { updateId } from '../../book/merge/index.ts';
import type { BookDisk, DiskRead, Meta, Snapshot } from '../store/index.ts';

/** A disk in memory: the twin of the browser's, for tests and for the command line. Several books may share one. */
export function memoryDisk(): BookDisk {
  const records = new Map<string, RecordState>();
  const log = new Map<string, Update>();
  const blobs = new Map<string, Blob>();
  let meta: Meta | null = null;
  let snapshot: Snapshot | null = null;
  let tail: Promise<unknown> = Promise.resolve();
  const read = (keys: readonly (readonly [string, string])[], ids: readonly string[]): DiskRead =>
    structuredClone({
      meta,
      records: keys.map(([table, id]) => records.get(`${table}/${id}`)),
      log: ids.map((id) => log.get(id)),
    });
  return {
    transact: (want, decide) => {
      const run = tail.then(() => {
        const { write, answer } = decide(read(want.records ?? [], want.log ?? []));
        const kept = structuredClone({
          meta: write.meta,
          records: write.records,
          log: write.log,
          snapshot: write.snapshot,
        });
        meta = kept.meta ?? meta;
        snapshot = kept.snapshot ?? snapshot;
        for (const record of kept.records ?? []) records.set(`${record.table}/${record.id}`, record);
        for (const update of kept.log ?? []) log.set(updateId(update), update);
        for (const [hash, blob] of write.blobs ?? []) blobs.set(hash, blob);
        return answer;
      });
      tail = run.catch(() => undefined);
      return run;
    },
    readAll: async () => structuredClone({ meta, records: [...records.values()] }),
    readRecords: async (keys) => read(keys, []),
    readLog: async (ids) => read([], ids).log.filter((update) => update !== undefined),
    readLogFrom: async (actor, n = 1) =>
      structuredClone(
        [...log.values()]
          .filter((update) => actor === undefined || (update.actor === actor && update.n >= n))
          .sort((a, b) => (a.actor < b.actor ? -1 : a.actor > b.actor ? 1 : a.n - b.n)),
      ),
    readBlob: async (hash) => blobs.get(hash) ?? null,
    blobHashes: async () => [...blobs.keys()].sort(),
    readSnapshot: async () => structuredClone(snapshot),
    close: () => undefined,
  };
}
