import { expect, test } from 'vitest';
import { nameOf } from '../../../src/ui/book/value-words.ts';
import { demoBook } from '../../helpers/demo-book.ts';

test('a record that nobody named is called by its day or its kind, never by its id twice', async () => {
  const book = await demoBook();
  const { crashes, drills, ropes, sites } = book.tables;
  expect(nameOf(book, 'crashes', crashes[0]!.id)).toMatch(/^crash of \d{4}-\d\d-\d\d$/);
  expect(nameOf(book, 'drills', drills[0]!.id)).toBe(`drill of ${drills[0]!.on}`);
  expect(nameOf(book, 'ropes', ropes[0]!.id)).toBe('rope');
  expect(nameOf(book, 'sites', sites[0]!.id)).toBe(`site ${sites[0]!.name}`);
  expect(nameOf(book, 'sites', 'gone')).toBe('site gone');
});
