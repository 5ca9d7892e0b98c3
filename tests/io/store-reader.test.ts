import { join } from 'node:path';
import { build } from 'vite';
import { expect, it } from 'vitest';

/** Modules that a page would load for an entry, as paths in the repository. */
async function modulesOf(entry: string): Promise<string[]> {
  const found: string[] = [];
  await build({
    root: process.cwd(),
    configFile: false,
    publicDir: false,
    logLevel: 'error',
    plugins: [
      {
        name: 'modules-kept',
        generateBundle: (_, bundle) => {
          for (const chunk of Object.values(bundle))
            if (chunk.type === 'chunk') found.push(...Object.keys(chunk.modules));
        },
      },
    ],
    build: {
      write: false,
      rolldownOptions: { input: join(process.cwd(), entry), preserveEntrySignatures: 'strict' },
    },
  });
  return found;
}

it('a reader opens the plain book without loading the merge', async () => {
  const merge = (modules: string[]): string[] => modules.filter((path) => path.includes('src/book/merge/'));
  const reader = await modulesOf('src/io/web/store/reader-snapshot.ts');
  expect(reader.some((path) => path.endsWith('src/book/schema/restore-book.ts'))).toBe(true);
  expect(merge(reader)).toEqual([]);
  // The check sees it where it is.
  expect(merge(await modulesOf('src/io/web/store/web-disk.ts')).length).toBeGreaterThan(0);
}, 60_000);
