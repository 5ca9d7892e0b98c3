import { type Book, type BookTables, emptyBook, live, type PhotoRecord, tableNames } from '../../book/index.ts';
import { photosToSend } from '../book-file/index.ts';
import type { PublishedWithout } from './publication.ts';

/** What is published only when somebody asks for it. */
export interface AskedToPublish {
  readonly crashes: boolean;
  readonly patientPhotos: boolean;
  /** Photos that show a number plate, or that nobody has looked at for plates. */
  readonly platePhotos: boolean;
}

/** Tables that no reader of a plan needs: who drilled, and where on somebody's machine files lie. */
const never: ReadonlySet<string> = new Set(['drills', 'sources']);
/** Tables whose notes a plan sheet prints; all other notes are for whoever keeps the book. */
const notesShown: ReadonlySet<string> = new Set(['sites', 'supportPlaces']);

/**
 * The book as it is published: records that are not deleted, without what nobody asked for, without the history (who, device, when),
 * without drills, addresses of sources, procedures and the notes that no plan shows. Contested values stay, for a study counts each of
 * them, without the names of those who gave them.
 */
export function publishedBook(book: Book, asked: AskedToPublish): Book {
  const tables = emptyBook().tables as Record<string, readonly unknown[]>;
  for (const table of tableNames)
    if (!never.has(table)) tables[table] = live(book, table).map((one) => withoutNotes(table, one));
  const made = tables as unknown as BookTables;
  const photos = photosToPublish(book, asked);
  const ids = new Map(tableNames.map((table) => [table, new Set(made[table].map(({ id }) => id))]));
  const shown = new Set(photos.map(({ id }) => id));
  return {
    schema: book.schema,
    tables: {
      ...made,
      crashes: asked.crashes ? made.crashes : [],
      photos,
      settings: made.settings.map((one) => ({ ...one, procedures: '' })),
    },
    contested: book.contested
      .filter(({ table, id }) => (table === 'photos' ? shown.has(id) : ids.get(table)!.has(id)))
      .filter(({ table }) => table !== 'crashes' || asked.crashes)
      .filter(({ table, field }) => field !== 'procedures' && (field !== 'notes' || notesShown.has(table)))
      .map((one) => ({ ...one, values: one.values.map(({ value }) => ({ value, who: '', device: '', atMs: 0 })) })),
    madeFrom: [],
  };
}

const withoutNotes = (table: string, record: object): object =>
  'notes' in record && !notesShown.has(table) ? { ...record, notes: '' } : record;

/** The photos that go out: a photo that nobody said to be free of patients and plates stays behind unless asked for. */
function photosToPublish(book: Book, { crashes, patientPhotos, platePhotos }: AskedToPublish): PhotoRecord[] {
  // The same bytes may stand under several records: the worst word of them counts, also that of a deleted one.
  const plates = new Set(
    book.tables.photos.flatMap(({ hash, showsPlate, deleted }) =>
      showsPlate === true || (showsPlate === null && !deleted) ? [hash] : [],
    ),
  );
  return photosToSend(book, { crashes, patientPhotos }).filter(({ hash }) => platePhotos || !plates.has(hash));
}

/** What stays behind of a book, counted. */
export function publishedWithout(book: Book, asked: AskedToPublish): PublishedWithout {
  const all = live(book, 'photos').length;
  const withoutPatients = photosToSend(book, { crashes: false, patientPhotos: asked.patientPhotos }).length;
  return {
    crashes: asked.crashes ? 0 : live(book, 'crashes').length,
    patientPhotos: all - withoutPatients,
    platePhotos: withoutPatients - photosToPublish(book, asked).length,
  };
}
