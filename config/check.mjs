// Everything that can be known without running the program: types, types without a DOM, lint and format, layers, dead code.
import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from './bundle.mjs';
import { computing, workerStarts } from './layers.mjs';

/** Runs a tool of node_modules/.bin; true where it found nothing. */
function tool(title, name, args) {
  const run = spawnSync(join(root, 'node_modules/.bin', name), args, { cwd: root, encoding: 'utf8' });
  const output = `${run.stdout ?? ''}${run.stderr ?? ''}`;
  const fine = run.status === 0 && !/\(0 modules/.test(output);
  console.log(`${fine ? 'ok  ' : 'FAIL'} ${title}`);
  if (!fine) console.log(output.trim());
  return fine;
}

function* files(folder) {
  for (const entry of readdirSync(join(root, folder), { withFileTypes: true })) {
    const path = `${folder}/${entry.name}`;
    if (entry.isDirectory()) yield* files(path);
    else if (/\.tsx?$/.test(path)) yield path;
  }
}

/** Lines of src/ that break a rule which the import graph cannot see. */
function forbiddenWords() {
  const rules = [
    { what: 'a worker is started outside workers/', word: /new Worker\(|node:worker_threads/, may: workerStarts },
    {
      what: 'clock or unseeded chance in a computing folder',
      word: /Math\.random|Date\.now|new Date\(\)/,
      in: computing,
    },
  ];
  const found = [];
  for (const path of files('src')) {
    const text = readFileSync(join(root, path), 'utf8');
    for (const rule of rules) {
      const applies = rule.in
        ? rule.in.some((folder) => path.startsWith(`src/${folder}/`))
        : !rule.may.some((folder) => path.startsWith(`src/${folder}/`));
      if (applies && rule.word.test(text)) found.push(`${path}: ${rule.what}`);
    }
  }
  console.log(`${found.length ? 'FAIL' : 'ok  '} words kept to their folders`);
  for (const line of found) console.log(line);
  return found.length === 0;
}

const results = [
  tool('types', 'tsc', ['-p', 'tsconfig.json']),
  tool('types of the computing folders, without a DOM', 'tsc', ['-p', 'config/tsconfig.pure.json']),
  tool('lint and format', 'biome', ['check', '--error-on-warnings', '.']),
  tool('layers', 'depcruise', ['--config', 'config/dependency-cruiser.mjs', 'src']),
  tool('dead code', 'knip', ['--config', 'config/knip.json']),
  forbiddenWords(),
];
process.exitCode = results.every(Boolean) ? 0 : 1;
