import { expect, it } from 'vitest';
import { type Book, emptyBook, hasWorse, worseOfContested } from '../../../src/book/index.ts';
import { oneOfEach } from '../../helpers/full-book.ts';

const contested = (table: Book['contested'][number]['table'], field: string, ...values: unknown[]) => ({
  ...{ table, id: oneOfEach[table].id, field },
  values: values.map((value) => ({ value, who: 'A', device: 'd', atMs: 0 })),
});
const bookOf = (...open: Book['contested'][number][]): Book => ({
  ...emptyBook(),
  tables: {
    ...emptyBook().tables,
    ...Object.fromEntries(open.map(({ table }) => [table, [oneOfEach[table]]])),
  },
  contested: open,
});

it.each([
  ['arrivals', 'atMin', [4, 9], 9],
  ['arrivals', 'people', [4, 3], 3],
  ['ropes', 'lengthM', [60, 91], 60],
  ['ropes', 'ratedKn', [30, null], null],
  ['fleet', 'emptyMassKg', [9000, 12000], 9000],
  ['sites', 'patients', [1, 3, 2], 3],
  ['measurements', 'deleted', [true, false], false],
  ['corrections', 'deleted', [false, true], true],
] as const)('of %s the worse %s is used', (table, field, values, worse) => {
  const book = bookOf(contested(table, field, ...values));
  for (const one of [book, { ...book, contested: [contested(table, field, ...[...values].reverse())] }]) {
    const made = worseOfContested(one);
    expect((made.tables[table][0] as unknown as Record<string, unknown>)[field]).toBe(worse);
    expect(made.contested).toBe(one.contested);
  }
  expect(hasWorse({ table, field })).toBe(true);
});

it('leaves what has no worse value, and a book without contested fields, as it is', () => {
  const named = bookOf(contested('sites', 'name', 'Bend', 'North Bend'));
  expect(worseOfContested(named)).toBe(named);
  expect(hasWorse({ table: 'sites', field: 'name' })).toBe(false);
  expect(hasWorse({ table: 'measurements', field: 'reading' })).toBe(true);
});
