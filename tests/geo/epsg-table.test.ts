import { readFileSync, statSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { make, path } from '../../config/epsg-table.mjs';
import { crsOfText, loadEpsgTable } from '../../src/geo/index.ts';

const table = await loadEpsgTable();

describe('the table of coordinate reference systems', () => {
  it('is what config/epsg-table.mjs makes, under 1 MB', () => {
    expect(readFileSync(path, 'utf8') === make()).toBe(true);
    expect(statSync(path).size).toBeLessThan(1e6);
  });

  it('reads every definition, and none comes back changed', () => {
    const rows: { horizontal: string[] } = JSON.parse(readFileSync(path, 'utf8'));
    let used = 0;
    for (const row of rows.horizontal) {
      const [code, , definition] = row.split('|');
      if (!definition) continue;
      const crs = crsOfText(table, code, 'test');
      expect(crs.unitM === null || crs.unitM > 0).toBe(true);
      used++;
    }
    expect(used).toBeGreaterThan(4900);
  });

  it.each([
    [26918, 1],
    [2232, 1200 / 3937],
    [2913, 0.3048],
    [4326, null],
    [27700, 1],
  ])('knows the unit of EPSG:%i', (code, unitM) => {
    const found = crsOfText(table, String(code), 'test').unitM;
    if (unitM === null) expect(found).toBeNull();
    else expect(found).toBeCloseTo(unitM, 12);
  });

  it.each([
    [5703, 'm'],
    [6360, 'us-ft'],
    [8228, 'ft'],
    [5773, 'm'],
    [3855, 'm'],
    [5701, 'm'],
  ])('knows the unit of the heights EPSG:%i', (code, unit) => {
    expect(table.vertical(code)).toMatchObject({ unit, up: true });
  });
});
