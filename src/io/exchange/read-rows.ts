import { dsvFormat } from 'd3-dsv';
import { UserError } from '../../units/index.ts';

/** A table of texts: the names of its columns as written, and its rows. */
export interface Rows {
  readonly header: readonly string[];
  /** Cells of each row and the number of the row in the file, the header being row 1. */
  readonly rows: readonly { readonly at: number; readonly cells: readonly string[] }[];
}

/**
 * Rows of a delimited text (comma, semicolon, tab or bar, whichever its first line has most of) [source: rfc4180]. A quotation mark that
 * is never closed is refused, since everything after it would be taken for one cell. Empty rows are left out.
 */
export function readRows(text: string, file: string): Rows {
  const plain = text.replace(/^\uFEFF/, '');
  const quotes = plain.split('"').length - 1;
  if (quotes % 2 === 1) {
    throw new UserError(
      'csv-quote',
      `${file} opens a quotation mark and never closes it; export the table again as CSV.`,
    );
  }
  const first = /^[^\r\n]*/.exec(plain)![0];
  const delimiter = [',', ';', '\t', '|'].reduce(
    (best, mark) => (count(first, mark) > count(first, best) ? mark : best),
    ',',
  );
  const all = dsvFormat(delimiter).parseRows(plain);
  const [header, ...rest] = all;
  if (!header || header.length < 2) {
    throw new UserError('csv-columns', `${file} has no row of column names; give it one, such as name,lat,lon.`);
  }
  const rows = rest
    .map((cells, i) => ({ at: i + 2, cells }))
    .filter(({ cells }) => cells.some((cell) => cell.trim() !== ''));
  return { header: header.map((name) => name.trim()), rows };
}

const count = (text: string, mark: string): number => text.split(mark).length - 1;

/** Index of the first column whose name, in small letters and without spaces and marks, is one of `names`; −1 if none is. */
export function columnOf(header: readonly string[], names: readonly string[]): number {
  const plain = header.map((name) => name.toLowerCase().replace(/[^\p{L}\p{N}]/gu, ''));
  for (const name of names) {
    const at = plain.indexOf(name);
    if (at >= 0) return at;
  }
  return -1;
}
