import { expect, test } from 'vitest';
import { type Book, defaultFleet, defaultRates, emptyBook, readRecord } from '../../src/book/index.ts';
import { shippedResources } from '../../src/study/index.ts';
import { resourcesWith } from '../../src/workers/resources-with.ts';

const files = { ...shippedResources, how: 'book' as const, fleet: defaultFleet.slice(0, 1) };
const bookWith = (tables: Partial<Book['tables']>): Book => {
  const book = emptyBook();
  return { ...book, tables: { ...book.tables, ...tables } };
};

test('an empty book leaves the files’ resources as they are', () => {
  expect(resourcesWith(emptyBook(), null, files)).toEqual({ ...files, fullBelay: false });
});

test('each part that the book holds takes the place of the files’, the others stay', () => {
  const kits = [readRecord('kits', { id: 'k', name: 'Ours' }, 'test')];
  const rates = [readRecord('rates', { id: 'haulerKn', value: 0.15, reason: 'measured' }, 'test')];
  const settings = [readRecord('settings', { id: 'book', fullBelay: true }, 'test')];
  const made = resourcesWith(bookWith({ kits, rates, settings }), null, files);
  expect(made.kits).toEqual([{ id: 'k', name: 'Ours', ropes: [], items: [] }]);
  expect(made.fleet).toBe(files.fleet);
  expect(made.rates).toEqual({ ...defaultRates, haulerKn: 0.15 });
  expect(made.fullBelay).toBe(true);
  expect(resourcesWith(bookWith({ kits }), null, shippedResources).how).toBe('shipped');
});
