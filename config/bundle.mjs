// Bundles a TypeScript entry for Node, in silence, and only when it is missing or older than the sources it stands on.
import { existsSync, readdirSync, statSync } from 'node:fs';
import { basename, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('..', import.meta.url));
const cache = join(root, 'node_modules/.cache/brinkbook');

/** Newest modification time, ms, of a file or of the files below a folder. */
export function newest(path) {
  const stat = statSync(path);
  if (!stat.isDirectory()) return stat.mtimeMs;
  return Math.max(0, ...readdirSync(path).map((name) => newest(join(path, name))));
}

/**
 * Path of the bundled module for `entry` (relative to the repository). `sources` are the folders whose files make it
 * stale. The worker that decodes elevation is bundled beside it, so that `new URL('./decode.mjs', import.meta.url)` finds it.
 */
export async function bundle(entry, sources = ['src']) {
  const name = basename(entry).replace(/\.\w+$/, '');
  const outDir = join(cache, entry.replace(/[^\w]+/g, '-'));
  const output = join(outDir, `${name}.mjs`);
  const made = existsSync(output) ? statSync(output).mtimeMs : 0;
  const inputs = [...sources, 'package.json'].map((path) => newest(join(root, path)));
  if (made > Math.max(...inputs)) return output;
  const { build } = await import('vite');
  const worker = join(root, 'src/workers/node/decode.ts');
  await build({
    root,
    configFile: false,
    publicDir: false,
    logLevel: 'error',
    build: {
      ssr: true,
      outDir,
      emptyOutDir: true,
      target: 'node20',
      minify: false,
      sourcemap: true,
      rolldownOptions: {
        input: { [name]: resolve(root, entry), ...(existsSync(worker) ? { decode: worker } : {}) },
        output: { entryFileNames: '[name].mjs', chunkFileNames: '[name]-[hash].mjs' },
      },
    },
  });
  return output;
}
