import * as v from 'valibot';
import { UserError } from '../../units/index.ts';
import { BOOK_VERSION, type Book, type BookTables, type Contested } from './book.ts';
import { count, id, line } from './fields.ts';
import { type Migration, migrations } from './migrate.ts';
import { readField, readRecord } from './read-record.ts';
import { fieldsOf, isTable, tableNames } from './tables.ts';

const outer = v.strictObject({
  schema: v.string(),
  tables: v.looseObject({}),
  contested: v.optional(v.array(v.unknown()), () => []),
  madeFrom: v.optional(v.array(v.strictObject({ actor: id, n: count(0, 2 ** 40) })), () => []),
});
const contested = v.strictObject({
  table: v.string(),
  id,
  field: v.string(),
  values: v.array(
    v.strictObject({ value: v.unknown(), who: line, device: line, atMs: v.pipe(v.number(), v.finite()) }),
  ),
});

/**
 * The one door for a plain book: checks every record, fills in what may be missing and brings an older version up to this
 * one. `from` names the file for sentences; `steps` takes versions up. Throws a `UserError`, one sentence; a newer version is
 * refused by its number. Nothing of `json` is kept by reference.
 */
export function restoreBook(json: unknown, from: string, steps: readonly Migration[] = migrations): Book {
  const book = broughtUp(json, from, steps);
  const parsed = v.safeParse(outer, book, { abortEarly: true });
  if (!parsed.success) {
    const issue = parsed.issues[0];
    throw new UserError(
      'book-shape',
      `${from} has an unusable ${v.getDotPath(issue) ?? 'form'}: expected ${issue.expected ?? 'nothing there'}, but ${issue.received.slice(0, 60)} came; take another copy of the book.`,
    );
  }
  const read = readTables(book.tables as object, from);
  return {
    schema: `brinkbook/book@${BOOK_VERSION}`,
    tables: read,
    contested: parsed.output.contested.map((entry) => readContested(entry, from)),
    madeFrom: parsed.output.madeFrom,
  };
}

function readTables(given: object, from: string): BookTables {
  const unknown = Object.keys(given).find((name) => !isTable(name));
  if (unknown !== undefined) {
    throw new UserError(
      'book-table',
      `${from} has a table "${unknown.slice(0, 60)}" that a book does not have; remove it.`,
    );
  }
  const read: Record<string, unknown[]> = {};
  for (const table of tableNames) {
    const records: unknown = Object.hasOwn(given, table) ? (given as Record<string, unknown>)[table] : [];
    if (!Array.isArray(records)) {
      throw new UserError('book-table', `${from}: ${table} is no list of records; take another copy of the book.`);
    }
    read[table] = inOrder(
      records.map((record) => readRecord(table, record, from)),
      table,
      from,
    );
  }
  return read as unknown as BookTables;
}

/** The version that a plain book says it has, or null where it says none. */
export function versionOf(json: unknown): number | null {
  const schema =
    typeof json === 'object' && json !== null && Object.hasOwn(json, 'schema')
      ? (json as { schema: unknown }).schema
      : null;
  const found = typeof schema === 'string' ? /^brinkbook\/book@([1-9]\d{0,5})$/.exec(schema) : null;
  return found ? Number(found[1]) : null;
}

function broughtUp(json: unknown, from: string, steps: readonly Migration[]): Record<string, unknown> {
  const version = versionOf(json);
  const current = steps.length + 1;
  if (version === null) {
    throw new UserError(
      'book-schema',
      `${from} is no book: expected "schema": "brinkbook/book@${current}"; choose a book file.`,
    );
  }
  if (version > current) {
    throw new UserError(
      'book-newer',
      `${from} is a book of version ${version}, this program reads up to version ${current}; update the program.`,
    );
  }
  let book = json as Record<string, unknown>;
  for (const step of steps.slice(version - 1)) book = step(book);
  return book;
}

function inOrder<R extends { id: string }>(records: R[], table: string, from: string): R[] {
  records.sort((a, b) => (a.id < b.id ? -1 : a.id > b.id ? 1 : 0));
  const twice = records.find(({ id }, i) => records[i + 1]?.id === id);
  if (twice) {
    throw new UserError('book-twice', `${from}: ${table} "${twice.id}" is there twice; remove or rename one.`);
  }
  return records;
}

function readContested(value: unknown, from: string): Contested {
  const parsed = v.safeParse(contested, value, { abortEarly: true });
  const entry = parsed.success ? parsed.output : null;
  const { table = '', id = '', field = '' } = entry ?? {};
  if (!entry || !isTable(table) || !fieldsOf(table).includes(field) || entry.values.length < 2) {
    throw new UserError(
      'book-contested',
      `${from} has an unusable entry among its contested fields; take another copy of the book.`,
    );
  }
  const values = entry.values.map((one) => ({ ...one, value: readField(table, id, field, one.value, from) }));
  return { table, id, field, values };
}
