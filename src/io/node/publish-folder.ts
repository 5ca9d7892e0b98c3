import { rmSync } from 'node:fs';
import { lstat, mkdir, readdir, readFile, realpath, rename, rm, writeFile } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import { UserError } from '../../units/index.ts';

/** The file by which a folder is known as a former publication, and what it begins with. */
const MARKER = 'brinkbook-published.json';
const SCHEMA = 'brinkbook/published@1';
/** All that a publication has at its top: anything else in the folder is somebody's own. */
const OURS = new Set([
  ...[MARKER, 'index.html', 'call', 'assets', 'data', 'sheets', 'icons', 'mark.svg', 'call.webmanifest', 'sw.js'],
]);

/** A folder that is being written beside its place. */
export interface FolderInMaking {
  /** Where it is written, for those who write files themselves. */
  readonly path: string;
  /** Writes a file below it; folders are made as needed. */
  write(path: string, content: string | Uint8Array): Promise<void>;
  /** Puts it in its place, instead of a former publication. */
  finish(): Promise<void>;
  /** Takes away what was written; the folder that was there stays as it was. */
  drop(): Promise<void>;
}

/**
 * Begins to write a published folder at `out`: beside it, so that nobody ever sees half of one. Throws `UserError` where there is
 * something at `out` that is no former publication, or no place to write. An interrupt (SIGINT, SIGTERM) takes away what was written.
 */
export async function publishFolder(out: string): Promise<FolderInMaking> {
  const place = await placeOf(out);
  await refuseOthers(place, out);
  const path = join(dirname(place), `.${basename(place)}.part-${process.pid}`);
  await mkdir(path).catch((cause) => {
    throw unwritable(out, cause);
  });
  const stop = (signal: NodeJS.Signals): void => {
    rmSync(path, { recursive: true, force: true });
    process.exit(signal === 'SIGINT' ? 130 : 143);
  };
  process.on('SIGINT', stop).on('SIGTERM', stop);
  const ended = (): void => void process.off('SIGINT', stop).off('SIGTERM', stop);
  return {
    path,
    async write(file, content) {
      const to = join(path, file);
      try {
        await mkdir(dirname(to), { recursive: true });
        await writeFile(to, content, { flag: 'wx' });
      } catch (cause) {
        throw unwritable(out, cause);
      }
    },
    async finish() {
      await writeFile(join(path, MARKER), `${JSON.stringify({ schema: SCHEMA })}\n`);
      // Somebody may have put something there meanwhile.
      await refuseOthers(place, out);
      const former = `${path}-former`;
      const had = await exists(place);
      if (had) await rename(place, former);
      try {
        await rename(path, place);
      } catch (cause) {
        if (had) await rename(former, place);
        throw unwritable(out, cause);
      }
      ended();
      await rm(former, { recursive: true, force: true });
    },
    async drop() {
      await rm(path, { recursive: true, force: true });
      ended();
    },
  };
}

/** The real place, where `out` is a link to it. */
async function placeOf(out: string): Promise<string> {
  const place = resolve(out);
  try {
    return await realpath(place);
  } catch {
    return place;
  }
}

async function refuseOthers(place: string, out: string): Promise<void> {
  const status = await lstat(place).catch(() => null);
  if (!status) return;
  if (!status.isDirectory()) throw new UserError('not-a-folder', `${out} is no folder; name a new or empty one.`);
  const names = await readdir(place).catch((cause) => {
    throw unwritable(out, cause);
  });
  if (names.length === 0) return;
  if (!(await isPublication(place))) {
    throw new UserError(
      'not-empty',
      `${out} is not empty and was not written by this command; name a new or empty folder, nothing was changed.`,
    );
  }
  const other = names.find((name) => !OURS.has(name));
  if (other !== undefined) {
    throw new UserError(
      'not-empty',
      `${out} also holds "${other}", which this command did not write; move it away first, nothing was changed.`,
    );
  }
}

async function isPublication(place: string): Promise<boolean> {
  try {
    return JSON.parse(await readFile(join(place, MARKER), 'utf8'))?.schema === SCHEMA;
  } catch {
    return false;
  }
}

const exists = async (path: string): Promise<boolean> => (await lstat(path).catch(() => null)) !== null;

const reasons: Readonly<Record<string, string>> = {
  ENOENT: 'the folder above it is not there',
  ENOTDIR: 'what is above it is no folder',
  EACCES: 'you have no permission',
  EPERM: 'you have no permission',
  ENOSPC: 'the disk is full',
  EROFS: 'the disk is read-only',
};

function unwritable(out: string, cause: unknown): UserError {
  const code = (cause as { code?: string }).code ?? '';
  return new UserError('unwritable', `${out} cannot be written (${reasons[code] ?? code}); choose another place.`, {
    cause,
  });
}
