import { type FileHandle, open } from 'node:fs/promises';
import { UserError } from '../../units/index.ts';
import type { ByteSource } from '../ports.ts';

/** A file on disk. It is opened at the first read; `close` it when done. Failures are `UserError`s that name the path. */
export function fileSource(path: string): ByteSource {
  let opening: Promise<FileHandle> | null = null;
  const handle = (): Promise<FileHandle> => {
    opening ??= open(path, 'r').catch((cause) => {
      opening = null;
      throw refusal(path, cause);
    });
    return opening;
  };
  return {
    name: path,
    async size() {
      const status = await (await handle()).stat();
      return status.size;
    },
    async read(offset, length, signal) {
      signal?.throwIfAborted();
      const file = await handle();
      const bytes = new Uint8Array(length);
      let done = 0;
      while (done < length) {
        const { bytesRead } = await file.read(bytes, done, length - done, offset + done).catch((cause) => {
          throw refusal(path, cause);
        });
        if (bytesRead === 0) return bytes.buffer.slice(0, done);
        done += bytesRead;
        signal?.throwIfAborted();
      }
      return bytes.buffer;
    },
    async close() {
      const file = await opening?.catch(() => null);
      opening = null;
      await file?.close();
    },
  };
}

const reasons: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file',
  EISDIR: 'it is a folder',
  EACCES: 'you have no permission to read it',
  EMFILE: 'too many files are open',
};

function refusal(path: string, cause: unknown): UserError {
  const code = (cause as { code?: string }).code ?? '';
  return new UserError('unreadable', `${path} cannot be read: ${reasons[code] ?? code}; check the path.`, { cause });
}
