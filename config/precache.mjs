// After a build: the list of the app's files, each with its revision, goes into the service worker, whose own bytes change with it.
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';

const LIST = '__BRINKBOOK_FILES__';
const VERSION = '__BRINKBOOK_VERSION__';
/** Not part of the running app: the worker itself and what only a debugger reads. */
const left = /^\/sw\.js$|\.map$/;

/** Vite plugin: fills in the service worker when every page of the build lies on the disk. */
export function precache() {
  return {
    name: 'brinkbook-precache',
    apply: 'build',
    buildApp: {
      order: 'post',
      handler: async ({ config }) => {
        const out = resolve(config.root, config.build.outDir);
        const worker = join(out, 'sw.js');
        const code = readFileSync(worker, 'utf8');
        if (!code.includes(LIST) || !code.includes(VERSION)) {
          throw new Error('sw.js has no place for the list of files; see src/workers/web/sw.ts.');
        }
        const files = Object.fromEntries(
          [...paths(out)]
            .filter((path) => !left.test(path))
            .sort()
            .map((path) => [path, revision(readFileSync(join(out, path)))]),
        );
        const list = JSON.stringify(files);
        // The worker's code counts too: another worker is another version.
        const version = revision(`${code}${list}`);
        writeFileSync(worker, code.replace(LIST, list).replace(VERSION, version));
      },
    },
  };
}

/** Changes with any source file below a folder: studies kept by another program are made anew. */
export const programOf = (folder) =>
  revision(
    [...paths(folder)]
      .sort()
      .map((path) => `${path} ${revision(readFileSync(join(folder, path)))}`)
      .join(),
  );

const revision = (bytes) => createHash('sha256').update(bytes).digest('hex').slice(0, 12);

function* paths(folder, under = '') {
  for (const entry of readdirSync(join(folder, under), { withFileTypes: true })) {
    const path = `${under}/${entry.name}`;
    if (entry.isDirectory()) yield* paths(folder, path);
    else yield path;
  }
}
