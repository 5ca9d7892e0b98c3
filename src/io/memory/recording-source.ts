import type { ByteSource } from '../ports.ts';

/** A source that notes what was asked of it. */
export interface RecordingSource extends ByteSource {
  readonly reads: { readonly offset: number; readonly length: number }[];
  /** Bytes asked for since the last `forget`. */
  bytesRead(): number;
  forget(): void;
}

/** Notes every read of another source, so that a test can count requests and bytes. */
export function recordingSource(source: ByteSource): RecordingSource {
  const reads: { offset: number; length: number }[] = [];
  return {
    name: source.name,
    reads,
    size: (signal) => source.size(signal),
    read: async (offset, length, signal) => {
      reads.push({ offset, length });
      return source.read(offset, length, signal);
    },
    close: async () => source.close?.(),
    bytesRead: () => reads.reduce((sum, read) => sum + read.length, 0),
    forget: () => {
      reads.length = 0;
    },
  };
}
