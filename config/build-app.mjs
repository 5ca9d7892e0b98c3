// The built app in dist/, built first where it is missing or older than its sources.
import { spawnSync } from 'node:child_process';
import { existsSync, renameSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { newest, root } from './bundle.mjs';

export const dist = join(root, 'dist');

/** Folder of the built app; null where it could not be built, which the lines on standard error say. */
export function builtApp() {
  return !isStale() || build() ? dist : null;
}

/** Builds beside and then puts in place, so that the app is there whole whoever else starts or looks at the same time. */
function build() {
  console.error('Building the app …');
  const part = join(root, `node_modules/.cache/brinkbook/dist-${process.pid}`);
  const vite = join(root, 'node_modules/vite/bin/vite.js');
  const args = [vite, 'build', '--logLevel', 'warn', '--outDir', part];
  // Standard output is the command's own.
  const made = spawnSync(process.execPath, args, { cwd: root, stdio: ['ignore', 2, 'inherit'] });
  if (made.status !== 0) {
    console.error('The app could not be built; see the lines above.');
    return false;
  }
  try {
    rmSync(dist, { recursive: true, force: true });
    renameSync(part, dist);
  } catch (error) {
    // Another start put its own there in between.
    rmSync(part, { recursive: true, force: true });
    if (isStale()) throw error;
  }
  return true;
}

/** True where the built app is missing or older than anything that it is built from. */
function isStale() {
  const built = join(dist, 'index.html');
  if (!existsSync(built)) return true;
  const inputs = ['src', 'public', 'config', 'vite.config.ts', 'package.json'].map((path) => newest(join(root, path)));
  return Math.max(...inputs) > statSync(built).mtimeMs;
}
