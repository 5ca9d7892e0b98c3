// Makes the demo district in data/demo/ when it is missing or its recipe has changed: npm run demo
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from './bundle.mjs';

const target = join(root, 'data/demo');

function* files(folder) {
  const entries = readdirSync(join(root, folder), { withFileTypes: true });
  for (const entry of entries.sort((a, b) => (a.name < b.name ? -1 : 1))) {
    const path = `${folder}/${entry.name}`;
    if (entry.isDirectory()) yield* files(path);
    else if (entry.name.endsWith('.ts')) yield path;
  }
}

/** Changes whenever one of these files does. */
function hashOf(paths, before = '') {
  const hash = createHash('sha256').update(before);
  for (const path of paths) hash.update(path).update(readFileSync(join(root, path)));
  return hash.digest('hex');
}

/** The ground, roads and plain files depend on these. */
const sources = [...files('seeds'), ...files('src/io/node'), ...files('src/units')];
const wanted = hashOf(
  sources.filter(
    (name) => /^seeds|write-geotiff|angle|random/.test(name) && !/make-book|district-|plain-files/.test(name),
  ),
);
const stamp = join(target, 'recipe.sha256');
if (!existsSync(stamp) || readFileSync(stamp, 'utf8').trim() !== wanted) {
  console.error('Making the demo district (under a minute) …');
  const part = `${target}.part-${process.pid}`;
  rmSync(part, { recursive: true, force: true });
  mkdirSync(part, { recursive: true });
  const made = spawnSync(process.execPath, [join(root, 'config/run.mjs'), 'seeds/make.ts', part], {
    cwd: root,
    stdio: 'inherit',
  });
  if (made.status === 0) {
    writeFileSync(join(part, 'recipe.sha256'), `${wanted}\n`);
    rmSync(target, { recursive: true, force: true });
    renameSync(part, target);
  } else {
    rmSync(part, { recursive: true, force: true });
    process.exitCode = 1;
  }
}

// The book file is made from the plain files, so that a change of its format does not make the ground again.
const bookStamp = join(target, 'book.sha256');
const bookSources = [...files('seeds'), ...files('src/book'), ...files('src/io/book-file')];
const wantedBook = hashOf(bookSources, wanted);
if (!process.exitCode && (!existsSync(bookStamp) || readFileSync(bookStamp, 'utf8').trim() !== wantedBook)) {
  const made = spawnSync(process.execPath, [join(root, 'config/run.mjs'), 'seeds/make-book.ts', target], {
    cwd: root,
    stdio: 'inherit',
  });
  if (made.status === 0) writeFileSync(bookStamp, `${wantedBook}\n`);
  else process.exitCode = 1;
}
