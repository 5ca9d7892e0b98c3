import { existsSync, renameSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { type BuildEnvironmentOptions, build } from 'vite';
import { newest } from '../../config/bundle.mjs';
import { root } from './app.ts';

const cache = join(root, 'node_modules/.cache/brinkbook');

/** True where a page was built after the last change of anything that it may stand on. */
function isFresh(folder: string): boolean {
  if (!existsSync(folder)) return false;
  const inputs = ['src', 'tests/browser', 'tests/helpers', 'package.json'].map((path) => newest(join(root, path)));
  return statSync(folder).mtimeMs > Math.max(...inputs);
}

/**
 * Folder of a page that a test builds from an entry of its own, named as the entry: built once for all files of tests that
 * serve it, and again when a source is newer. `entry` is relative to the repository.
 */
export async function builtPage(name: string, entry: string, more: BuildEnvironmentOptions): Promise<string> {
  const folder = join(cache, `page-${name}`);
  if (isFresh(folder)) return folder;
  // Built beside and then put in place: another worker may serve or build the same.
  const outDir = join(cache, `page-${name}-${process.pid}`);
  await build({
    root,
    configFile: false,
    publicDir: false,
    logLevel: 'error',
    base: '/',
    worker: { format: 'es' },
    build: {
      ...more,
      outDir,
      target: 'es2023',
      rolldownOptions: {
        checks: { pluginTimings: false },
        ...more.rolldownOptions,
        input: { [name]: join(root, entry) },
      },
    },
  });
  if (isFresh(folder)) rmSync(outDir, { recursive: true });
  else {
    rmSync(folder, { recursive: true, force: true });
    renameSync(outDir, folder);
  }
  return folder;
}
