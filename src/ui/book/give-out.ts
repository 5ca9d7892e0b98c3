import type { Book } from '../../book/index.ts';
import type { CopyOfBook } from '../../io/book-file/log/index.ts';
import { type ExportChoice, writeCsv, writeGeoJson, writeGpx, writeKml } from '../../io/index.ts';
import type { OpenBook } from '../../io/store/index.ts';
import { files, today } from './files.ts';

/** The open formats that a book's places go out in. */
export const formats = [
  { name: 'GeoJSON', ending: 'geojson', type: 'application/geo+json', write: writeGeoJson },
  { name: 'GPX', ending: 'gpx', type: 'application/gpx+xml', write: writeGpx },
  { name: 'KML', ending: 'kml', type: 'application/vnd.google-earth.kml+xml', write: writeKml },
  { name: 'CSV', ending: 'csv', type: 'text/csv', write: writeCsv },
] as const satisfies readonly {
  readonly name: string;
  readonly ending: string;
  readonly type: string;
  write(book: Book, choice: ExportChoice): string;
}[];

/** A file name from the district, today, and an ending. */
export function fileName(book: Book, ending: string): string {
  const district = (book.tables.settings[0]?.district || 'district').normalize('NFKD').replace(/[^A-Za-z0-9]+/g, '-');
  return `${district.replace(/^-+|-+$/g, '').toLowerCase() || 'district'}-${today()}.${ending}`;
}

/** The whole book with every photo of this device as one file, made in the worker. Rejects with a `UserError`. */
export async function wholeBook(
  opened: OpenBook,
  asked: { readonly crashes: boolean; readonly patientPhotos: boolean },
  content: 'whole' | 'reading copy' = 'whole',
): Promise<CopyOfBook> {
  const photos = new Map<string, Blob>();
  for (const hash of await opened.photoHashes()) {
    const blob = await opened.photo(hash);
    if (blob) photos.set(hash, blob);
  }
  const updates = await opened.updates();
  return files().call('writeBook', { updates, photos, asked, content, writtenAtMs: Date.now() });
}
