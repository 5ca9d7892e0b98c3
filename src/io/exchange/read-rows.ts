import { dsvFormat } from 'd3-dsv';
import { UserError } from '../../units/index.ts';

/** The most lines that are looked at; far over what may be taken from one file. */
const MOST_LINES = 1_000_000;

/** A table of texts: the names of its columns as written, and its rows. */
export interface Rows {
  readonly header: readonly string[];
  /** Cells of each row and the number of the row in the file, the header being row 1. */
  readonly rows: readonly { readonly at: number; readonly cells: readonly string[] }[];
}

/**
 * Rows of a delimited text (comma, semicolon, tab or bar, whichever its first line has most of) [source: rfc4180]. Quotation
 * marks that do not pair up are refused, since rows after them would be taken for one cell. Empty rows are left out.
 */
export function readRows(text: string, file: string): Rows {
  const plain = text.replace(/^\uFEFF/, '');
  const first = /^[^\r\n]*/.exec(plain)![0];
  const delimiter = [',', ';', '\t', '|'].reduce(
    (best, mark) => (count(first, mark) > count(first, best) ? mark : best),
    ',',
  );
  const lines = count(plain, '\n');
  if (lines > MOST_LINES) {
    throw new UserError(
      'csv-lines',
      `${file} has ${lines} lines, over the ${MOST_LINES} that are read; leave empty ones out or split it.`,
    );
  }
  checkQuotes(plain, delimiter, file);
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

/** Throws where a quoted cell is never closed or goes on behind its closing mark. */
function checkQuotes(text: string, delimiter: string, file: string): void {
  const refuse = (at: number, what: string): UserError => {
    const line = text.slice(0, at).split('\n').length;
    return new UserError('csv-quote', `${file} ${what} in line ${line}; export the table again as CSV.`);
  };
  let at = 0;
  while (at < text.length) {
    if (text[at] === '"') {
      const start = at;
      do {
        at = text.indexOf('"', at + 1);
        if (at < 0) throw refuse(start, 'opens a quotation mark and never closes it');
        at++;
      } while (text[at] === '"');
      if (at < text.length && text[at] !== delimiter && text[at] !== '\n' && text[at] !== '\r') {
        throw refuse(at, 'has a stray quotation mark');
      }
    }
    while (at < text.length && text[at] !== delimiter && text[at] !== '\n' && text[at] !== '\r') at++;
    at++;
  }
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
