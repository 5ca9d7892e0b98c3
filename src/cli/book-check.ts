import { live, looseEnds, tableNames } from '../book/index.ts';
import { checkLog } from '../io/book-file/log/index.ts';
import { readBook } from '../io/index.ts';
import { fileSource } from '../io/node/index.ts';
import { readFilesAndOptions } from './book-arguments.ts';

/** `book check FILE`: reads everything, prints what the book holds and what in it needs a look. */
export async function checkBook(args: string[]): Promise<void> {
  const { files, given } = readFilesAndOptions(args, 1, 'check takes one file', { json: { type: 'boolean' } });
  const source = fileSource(files[0]!);
  try {
    const { book, file } = await readBook(source);
    const updates = file?.log ? checkLog(file, source.name).size : null;
    const counts = Object.fromEntries(
      tableNames.map((table) => [
        table,
        { there: live(book, table).length, deleted: book.tables[table].length - live(book, table).length },
      ]),
    );
    const found = {
      file: source.name,
      form: file ? file.manifest.content : 'plain book',
      district: book.tables.settings[0]?.district ?? '',
      writtenAt: file?.manifest.writtenAt ?? null,
      tables: counts,
      edits: updates,
      photos: file ? file.photoHashes.length : null,
      leftOut: file?.manifest.leftOut ?? null,
      contested: book.contested.map(({ table, id, field, values }) => ({ table, id, field, values: values.length })),
      looseEnds: looseEnds(book),
    };
    process.stdout.write(given.json ? `${JSON.stringify(found, null, 1)}\n` : report(found));
  } finally {
    await source.close?.();
  }
}

interface Found {
  readonly file: string;
  readonly form: string;
  readonly district: string;
  readonly writtenAt: string | null;
  readonly tables: Readonly<Record<string, { there: number; deleted: number }>>;
  readonly edits: number | null;
  readonly photos: number | null;
  readonly leftOut: { crashes: boolean; patientPhotos: boolean; missingPhotos: readonly string[] } | null;
  readonly contested: readonly { table: string; id: string; field: string; values: number }[];
  readonly looseEnds: readonly string[];
}

function report(found: Found): string {
  const forms: Readonly<Record<string, string>> = { whole: 'a whole book file', 'reading copy': 'a reading copy' };
  const of = found.district ? ` of ${printable(found.district)}` : '';
  const lines = [`${found.file}: ${forms[found.form] ?? 'a plain book'}${of}, checked to the last byte`];
  const row = (name: string, value: string): void => {
    lines.push(`  ${name.padEnd(16)} ${value}`);
  };
  if (found.writtenAt) row('written', found.writtenAt);
  if (found.edits !== null) row('edits', String(found.edits));
  if (found.photos !== null) row('photos', String(found.photos));
  for (const [table, { there, deleted }] of Object.entries(found.tables)) {
    if (there + deleted > 0) row(table, `${there}${deleted > 0 ? ` and ${deleted} deleted` : ''}`);
  }
  const { leftOut } = found;
  if (leftOut?.crashes) row('left out', 'crash points');
  if (leftOut?.patientPhotos) row('left out', 'photos that show a patient');
  if (leftOut && leftOut.missingPhotos.length > 0)
    row('missing', `${leftOut.missingPhotos.length} photos that were on no device that wrote this file`);
  for (const { table, id, field, values } of found.contested)
    lines.push(`check: ${table} "${id}" has ${values} values for ${field}; somebody has to decide.`);
  for (const sentence of found.looseEnds) lines.push(`check: ${printable(sentence)}`);
  return `${lines.join('\n')}\n`;
}

/** Text of a book on a terminal: without characters that steer it or turn its direction. */
const printable = (text: string): string =>
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is taken out.
  text.replace(/[\u0000-\u001F\u007F-\u009F\u061C\u200B-\u200F\u2028-\u202E\u2060-\u206F\uFEFF]/g, '');
