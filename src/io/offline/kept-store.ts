/** Something kept: its bytes, when it was put there, and the version of the file that it was read from, if it has one. */
export interface KeptEntry {
  readonly bytes: ArrayBuffer;
  readonly atMs: number;
  readonly version: string | null;
}

/** Small named blobs on the device. Keys are paths without a leading slash, of characters that an address may carry. Writes are whole or not at all. */
export interface KeptStore {
  read(key: string): Promise<KeptEntry | null>;
  write(key: string, bytes: ArrayBuffer | Uint8Array<ArrayBuffer>, version?: string | null): Promise<void>;
  /** Keys that begin with a prefix, in no special order. */
  keys(prefix: string): Promise<string[]>;
  remove(key: string): Promise<void>;
}
