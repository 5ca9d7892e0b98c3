// Loader of TypeScript for Node itself: the tests then run as plain modules, whose calls cost about what they cost when built.
import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { transform } from '@swc/core';

const module = (text) => ({ format: 'module', source: text, shortCircuit: true });

/** What only a page can use is there by name: style sheets, addresses of workers. */
export async function resolve(specifier, context, next) {
  if (specifier.endsWith('?worker&url')) return { url: `address:${specifier}`, shortCircuit: true };
  return next(specifier, context);
}

/** Types taken off, JSX turned into calls; a map keeps the lines of errors. */
export async function load(url, context, next) {
  if (url.startsWith('address:')) return module("export default '';");
  const path = url.split('?')[0];
  if (path.endsWith('.css')) return module('');
  if (path.endsWith('.json')) return module(`export default ${await readFile(fileURLToPath(path), 'utf8')};`);
  if (!/\.tsx?$/.test(path)) return next(url, context);
  const filename = fileURLToPath(path);
  const { code } = await transform(await readFile(filename, 'utf8'), {
    filename,
    configFile: false,
    swcrc: false,
    module: { type: 'es6' },
    sourceMaps: 'inline',
    jsc: {
      target: 'es2023',
      parser: { syntax: 'typescript', tsx: path.endsWith('.tsx') },
      transform: { react: { runtime: 'automatic' }, verbatimModuleSyntax: true },
    },
  });
  return module(code);
}
