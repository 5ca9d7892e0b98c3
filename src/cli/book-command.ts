import { UsageError } from './arguments.ts';
import { checkBook } from './book-check.ts';
import { exportBook } from './book-export.ts';
import { mergeBooks } from './book-merge.ts';

export const bookHelp = `book: check, merge and export books

  npm run -s brinkbook -- book check FILE [--json]
  npm run -s brinkbook -- book merge A B --out C [--json]
  npm run -s brinkbook -- book export FILE --as FORMAT [options]

check    reads a book file (NAME.brinkbook) or a plain book (JSON) to the last byte and says what it holds
merge    two book files of one district into one; which comes first does not matter, nothing is lost
export   sites, marks and places for other programs, on standard output or into a file

  --as FORMAT             geojson, gpx, kml, csv, or neighbour (one HTML page that reads without Brinkbook)
  --sites ID,ID           only these sites, with their marks and places
  --with-crashes          crash points too; they stay behind otherwise (never on a neighbour's page)
  --with-patient-photos   photos that show a patient too; they stay behind otherwise (neighbour)
  --units us|metric       lengths on a neighbour's page (the book's own otherwise)
  --out FILE              where to write; a file that is there is replaced only when the new one is whole
  --json                  prints what was found or done as JSON (check, merge)
`;

const commands: Record<string, (args: string[]) => Promise<void>> = {
  check: checkBook,
  merge: mergeBooks,
  export: exportBook,
};

/** Runs `book`; throws `UsageError` or `UserError`. */
export async function bookCommand([name, ...args]: string[]): Promise<void> {
  const command = name !== undefined && Object.hasOwn(commands, name) ? commands[name] : undefined;
  if (!command) {
    throw new UsageError(
      `${name === undefined ? 'What to do with the book is missing' : `"${name}" is nothing to do with a book`}; it is one of ${Object.keys(commands).join(', ')}, see --help.`,
    );
  }
  await command(args);
}
