import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

/** Words that stand for a source without an entry; `docs/sources.md` says what they mean. */
const words = ['derived', 'practice'];
const listed = new Set(words);
for (const [, key] of readFileSync('docs/sources.md', 'utf8').matchAll(/^\| ([a-z0-9-]+) +\|/gm)) listed.add(key);

function* files(folder: string): Generator<string> {
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) yield* files(path);
    else if (/\.(tsx?|mjs|md)$/.test(path)) yield path;
  }
}

/** Keys cited in a text: `[source: key, place; key]`, and in records of the book and of rigging `source: 'key'`. */
function cited(path: string, text: string): string[] {
  const inBrackets = [...text.matchAll(/\[source: ([^\]]+)\]/g)].flatMap(([, keys]) =>
    keys.split(';').map((key) => key.split(',')[0].trim()),
  );
  const inRecords = /src\/(book|rigging)\//.test(path)
    ? [...text.matchAll(/\bsource: '([^']+)'/g)].map(([, key]) => key)
    : [];
  return [...inBrackets, ...inRecords];
}

describe('sources', () => {
  it('cites only keys that docs/sources.md lists', () => {
    const unknown: string[] = [];
    let found = 0;
    for (const folder of ['src', 'tests', 'seeds']) {
      for (const path of files(folder)) {
        if (path.endsWith('sources.test.ts')) continue;
        for (const key of cited(path, readFileSync(path, 'utf8'))) {
          found++;
          if (!listed.has(key)) unknown.push(`${path}: ${key}`);
        }
      }
    }
    expect(found).toBeGreaterThan(50);
    expect(unknown).toEqual([]);
  });

  it('lists no key twice', () => {
    const keys = [...readFileSync('docs/sources.md', 'utf8').matchAll(/^\| ([a-z0-9-]+) +\|/gm)].map(([, key]) => key);
    expect(keys.filter((key, i) => key !== 'key' && keys.indexOf(key) !== i)).toEqual([]);
  });
});
