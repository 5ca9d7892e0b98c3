import { UserError } from '../../units/index.ts';
import type { FilesToKeep, KeepProgress, KeptFiles, KeptSet } from './kept-set.ts';

/** Folder of the kept sets in the origin private file system, and the file that says that a set is whole. */
const FOLDER = 'kept-files';
const LIST = 'set.json';
/** A little more is asked for than the files take, so that the book itself still has room, bytes. */
const SPARE_BYTES = 20 * 1024 * 1024;

const TRIES = 20;
const TRY_AGAIN_MS = 50;

/**
 * Copies files into the origin private file system, stream to stream: a raster of any size takes a few chunks of memory.
 * The set counts as kept once its last byte is written; given up or failed, nothing of it stays. Throws `UserError` where
 * there is no room or no such storage, the signal's reason where it is aborted.
 */
export async function keep(
  { name, options, files }: FilesToKeep,
  onProgress: (progress: KeepProgress) => void = () => {},
  signal?: AbortSignal,
): Promise<KeptSet> {
  const of = files.reduce((sum, { file }) => sum + file.size, 0);
  const folder = await openFolder();
  await checkRoom(of);
  const id = crypto.randomUUID();
  // The lock tells other windows that this set is being written and not left over from a crash.
  return navigator.locks.request(lockOf(id), async () => {
    try {
      const own = await folder.getDirectoryHandle(id, { create: true });
      let done = 0;
      onProgress({ done, of });
      for (const [i, { file }] of files.entries()) {
        const handle = await own.getFileHandle(`${i}`, { create: true });
        await copy(file, handle, signal, (bytes) => {
          done += bytes;
          onProgress({ done, of });
        });
      }
      const list = files.map(({ role, file }) => ({ role, name: file.name, bytes: file.size }));
      const set: KeptSet = { id, name, options, bytes: of, files: list };
      await copy(new Blob([JSON.stringify(set)]), await own.getFileHandle(LIST, { create: true }), signal, () => {});
      return set;
    } catch (error) {
      await clear(folder, id);
      throw inWords(error, signal);
    }
  });
}

/** The sets that are whole; what a crash left half written is cleared away. */
export async function kept(): Promise<KeptSet[]> {
  const folder = await openFolder();
  const { held } = await navigator.locks.query();
  const written = new Set(held?.map(({ name }) => name));
  const sets: KeptSet[] = [];
  for await (const [id, handle] of folder.entries()) {
    const set = handle.kind === 'directory' ? await readSet(handle as FileSystemDirectoryHandle) : null;
    if (set) sets.push(set);
    else if (!written.has(lockOf(id))) await clear(folder, id);
  }
  return sets.sort((a, b) => a.name.localeCompare(b.name));
}

/** The files of a kept set. Throws `UserError` where it is gone. */
export async function keptFiles(id: string): Promise<KeptFiles> {
  const folder = await openFolder();
  try {
    const own = await folder.getDirectoryHandle(id);
    const set = await readSet(own);
    if (!set) throw new Error('The list is missing.');
    const files = await Promise.all(
      set.files.map(async ({ role, name }, i) => {
        const file = await (await own.getFileHandle(`${i}`)).getFile();
        // Under its own name again; the bytes stay where they are.
        return { role, file: new File([file], name, { lastModified: file.lastModified }) };
      }),
    );
    const of = (role: string): File[] => files.filter((one) => one.role === role).map(({ file }) => file);
    return {
      elevation: of('elevation'),
      roads: of('roads')[0] ?? null,
      marks: of('marks')[0] ?? null,
      options: set.options,
    };
  } catch (cause) {
    throw new UserError('not-kept', 'These files are no longer kept on this device; choose them again.', { cause });
  }
}

/** Removes a kept set; nothing happens where it is gone already. */
export async function forget(id: string): Promise<void> {
  const folder = await openFolder();
  await folder.removeEntry(id, { recursive: true }).catch((error: DOMException) => {
    if (error.name !== 'NotFoundError') throw error;
  });
}

const lockOf = (id: string): string => `${FOLDER}:${id}`;

async function openFolder(): Promise<FileSystemDirectoryHandle> {
  try {
    const root = await navigator.storage.getDirectory();
    return await root.getDirectoryHandle(FOLDER, { create: true });
  } catch (cause) {
    throw new UserError(
      'no-storage',
      'This browser keeps no files for this page (a private window?); the files can be opened, but must be chosen again next time.',
      { cause },
    );
  }
}

/** Removes a set that is not whole. A file just given up stays locked for a moment; what cannot be removed now is cleared later. */
async function clear(folder: FileSystemDirectoryHandle, id: string): Promise<void> {
  for (let left = TRIES; left > 0; left--) {
    try {
      await folder.removeEntry(id, { recursive: true });
      return;
    } catch (error) {
      if (error instanceof DOMException && error.name === 'NotFoundError') return;
      await new Promise((resolve) => setTimeout(resolve, TRY_AGAIN_MS));
    }
  }
}

async function checkRoom(bytes: number): Promise<void> {
  const { usage = 0, quota = Number.POSITIVE_INFINITY } = await navigator.storage.estimate();
  if (bytes + SPARE_BYTES <= quota - usage) return;
  throw noRoom(`${megabytes(bytes)} are needed, ${megabytes(Math.max(0, quota - usage))} are free`);
}

async function copy(
  from: Blob,
  to: FileSystemFileHandle,
  signal: AbortSignal | undefined,
  onBytes: (bytes: number) => void,
): Promise<void> {
  signal?.throwIfAborted();
  const counted = new TransformStream<Uint8Array, Uint8Array>({
    transform(chunk, controller) {
      controller.enqueue(chunk);
      onBytes(chunk.byteLength);
    },
  });
  await from
    .stream()
    .pipeThrough(counted)
    .pipeTo(await to.createWritable(), signal ? { signal } : {});
}

async function readSet(own: FileSystemDirectoryHandle): Promise<KeptSet | null> {
  try {
    const file = await (await own.getFileHandle(LIST)).getFile();
    const set = JSON.parse(await file.text()) as KeptSet;
    for (const [i, { bytes }] of set.files.entries()) {
      if ((await (await own.getFileHandle(`${i}`)).getFile()).size !== bytes) return null;
    }
    return set;
  } catch {
    return null;
  }
}

function inWords(error: unknown, signal: AbortSignal | undefined): unknown {
  if (signal?.aborted) return signal.reason;
  const name = error instanceof DOMException ? error.name : '';
  if (name === 'QuotaExceededError') return noRoom('the browser gives no more room', error);
  if (name === 'NotReadableError' || name === 'NotFoundError') {
    return new UserError('unreadable', 'A file can no longer be read (moved or changed?); choose it again.', {
      cause: error,
    });
  }
  return error;
}

const noRoom = (why: string, cause?: unknown): UserError =>
  new UserError(
    'no-room',
    `The files do not fit on this device: ${why}. Remove kept files, or open them without keeping.`,
    {
      cause,
    },
  );

const megabytes = (bytes: number): string => `${Math.ceil(bytes / 1024 / 1024)} MB`;
