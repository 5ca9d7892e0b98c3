import { existsSync } from 'node:fs';
import { resolve } from 'node:path';

const root = process.env.BRINKBOOK_OPEN_DATA ?? '../shared/data';

/** Path of a folder of the open data, or null where it is not on this machine: the test then says that it was skipped. */
export function openData(folder: string): string | null {
  const path = resolve(root, folder);
  if (existsSync(path)) return path;
  console.log(`skipped: no open data at ${path} (set BRINKBOOK_OPEN_DATA)`);
  return null;
}
