import { open, rename, rm } from 'node:fs/promises';
import { UserError } from '../../units/index.ts';

/**
 * Writes a file whole or not at all: beside its place first, to the disk, then put in its place at once. A file that was there stays as
 * it was where anything fails. Throws a `UserError` that names the path.
 */
export async function writeWhole(path: string, bytes: Uint8Array): Promise<void> {
  const part = `${path}.part-${process.pid}`;
  try {
    const file = await open(part, 'wx');
    try {
      await file.writeFile(bytes);
      await file.sync();
    } finally {
      await file.close();
    }
    await rename(part, path);
  } catch (cause) {
    await rm(part, { force: true });
    const code = (cause as { code?: string }).code ?? '';
    throw new UserError('unwritable', `${path} cannot be written (${reasons[code] ?? code}); choose another place.`, {
      cause,
    });
  }
}

const reasons: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such folder',
  EISDIR: 'it is a folder',
  EACCES: 'you have no permission',
  ENOSPC: 'the disk is full',
  EROFS: 'the disk is read-only',
};
