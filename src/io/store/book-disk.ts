import type { TableName } from '../../book/index.ts';
import type { RecordState, Time, Update, Vector } from '../../book/merge/index.ts';
import type { SecondCopy } from './second-copy.ts';

/** What a device knows of its copy of the book besides its records. Plain values, maps and sets. */
export interface Meta {
  /** Version of the schema that the records were made with. */
  readonly version: number;
  /** Names the book; minted with it, so that a server can tell books apart. */
  readonly book: string;
  /** This copy's name as a writer, and the number of its next update. */
  readonly actor: string;
  readonly next: number;
  /** Latest time written or read. */
  readonly last: Time;
  readonly vector: Vector;
  /** Updates held that a newer program must apply. */
  readonly newer: number;
  /** The last copy that left the device: when, and what it held; null where none ever did. */
  readonly copyLeft: { readonly atMs: number; readonly heads: readonly (readonly [string, number])[] } | null;
  /** The book began on an empty disk while the second copy could not be asked, which may hold the book that this disk lost. */
  readonly begunUnasked?: boolean;
}

export type RecordKey = readonly [table: TableName, id: string];

/** What a transaction reads before it decides: in the order of what was asked. */
export interface DiskRead {
  readonly meta: Meta | null;
  readonly records: readonly (RecordState | undefined)[];
  readonly log: readonly (Update | undefined)[];
}

/** What it writes, all or nothing. */
export interface DiskWrite {
  readonly meta?: Meta;
  readonly records?: readonly RecordState[];
  readonly log?: readonly Update[];
  /** Photos by the SHA-256 of their bytes. */
  readonly blobs?: ReadonlyMap<string, Blob>;
  readonly snapshot?: Snapshot;
}

/** The plain book as JSON text, and what it was made from. */
export interface Snapshot {
  readonly text: string;
  readonly heads: readonly (readonly [string, number])[];
}

/**
 * Where a device keeps its book. Every promise rejects with a `UserError` where the device refuses; a refused transaction has
 * changed nothing.
 */
export interface BookDisk {
  /**
   * One read-and-write transaction, alone with the disk across all tabs. Resolves once its writes are durable. `decide` must not
   * wait for anything; what it throws undoes everything.
   */
  transact<T>(
    want: { readonly records?: readonly RecordKey[]; readonly log?: readonly string[] },
    decide: (read: DiskRead) => { readonly write: DiskWrite; readonly answer: T },
  ): Promise<T>;
  /** Meta and every record, as of one moment. */
  readAll(): Promise<{ readonly meta: Meta | null; readonly records: readonly RecordState[] }>;
  /** Meta and some records, as of one moment. */
  readRecords(keys: readonly RecordKey[]): Promise<DiskRead>;
  /** Updates by their ids, absent ones left out. */
  readLog(ids: readonly string[]): Promise<Update[]>;
  /** One actor's updates from a number on, in their order; without an actor, all. */
  readLogFrom(actor?: string, n?: number): Promise<Update[]>;
  readBlob(hash: string): Promise<Blob | null>;
  blobHashes(): Promise<string[]>;
  readSnapshot(): Promise<Snapshot | null>;
  close(): void;
}

/** What other tabs are told after a transaction. */
export interface TabNews {
  readonly ids: readonly string[];
  readonly keys: readonly RecordKey[];
}

/** News between the tabs of one origin. */
export interface TabChannel {
  tell(news: TabNews): void;
  /** Called with what other tabs tell; returns what ends it. */
  hear(listener: (news: TabNews) => void): () => void;
  close(): void;
}

/** What the book may not know by itself: time, chance, other tabs. */
export interface World {
  now(): number;
  /** A new random id, 16 or more letters and digits. */
  mintId(): string;
  readonly channel: TabChannel | null;
  /** Null where the device has no second place. */
  readonly copy: SecondCopy | null;
}
