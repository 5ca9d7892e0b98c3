import { existsSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { live, looseEnds } from '../../src/book/index.ts';
import { isInsideBounds } from '../../src/geo/index.ts';
import { checkLog } from '../../src/io/book-file/log/index.ts';
import { readBook } from '../../src/io/index.ts';
import { fileSource } from '../../src/io/node/index.ts';

const path = 'data/demo/tamarrow.brinkbook';

describe.skipIf(!existsSync(path))('the demo district’s book file', () => {
  it('is whole: its plain book is what its log says, and nothing in it hangs loose', async () => {
    const source = fileSource(path);
    const { book, file } = await readBook(source);
    const updates = [...checkLog(file!, path).values()];
    expect(updates.length).toBeGreaterThan(10);
    expect(updates.map(({ label }) => label)).toContain('Took over mile markers');
    await source.close!();
    expect(looseEnds(book)).toEqual([]);
    expect(live(book, 'sites').length).toBeGreaterThanOrEqual(14);
    for (const table of [
      'marks',
      'measurements',
      'signOffs',
      'events',
      'fleet',
      'kits',
      'ropes',
      'stations',
      'arrivals',
      'responseRows',
      'routes',
      'mileMarkers',
      'drills',
      'crashes',
    ] as const) {
      expect(live(book, table).length, table).toBeGreaterThan(0);
    }
    expect(live(book, 'sites').filter(({ patientPoint }) => patientPoint !== null)).toHaveLength(2);
    const { bounds, district } = book.tables.settings[0]!;
    expect(district).toMatch(/invented/);
    for (const { at } of live(book, 'crashes')) expect(isInsideBounds(at, bounds!)).toBe(true);
  });
});
