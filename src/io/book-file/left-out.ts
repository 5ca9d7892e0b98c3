import { type Book, live, type PhotoRecord } from '../../book/index.ts';

/** What leaves a book only when somebody asks for it. */
export interface Asked {
  readonly crashes: boolean;
  readonly patientPhotos: boolean;
}

/**
 * A plain book without the records that nobody asked for: crashes, and photos that show a patient, also where the same bytes stand
 * under a record that does not say so.
 */
export function withoutUnasked(book: Book, asked: Asked): Book {
  const hashes = asked.patientPhotos ? new Set() : patientHashes(book);
  const patients = new Set(book.tables.photos.filter(({ hash }) => hashes.has(hash)).map(({ id }) => id));
  return {
    ...book,
    tables: {
      ...book.tables,
      crashes: asked.crashes ? book.tables.crashes : [],
      photos: book.tables.photos.filter(({ id }) => !patients.has(id)),
    },
    contested: book.contested.filter(
      ({ table, id }) => !(table === 'crashes' && !asked.crashes) && !(table === 'photos' && patients.has(id)),
    ),
  };
}

/** The photos whose bytes go out: not deleted, and none that shows a patient unless asked for. */
export const photosToSend = (book: Book, asked: Asked): PhotoRecord[] => {
  const shown = live(book, 'photos');
  const patients = patientHashes(book);
  return shown.filter(({ hash }) => asked.patientPhotos || !patients.has(hash));
};

/** The same bytes may also stand under a record that says it shows a patient. */
const patientHashes = (book: Book): ReadonlySet<string> =>
  new Set(book.tables.photos.filter(({ showsPatient }) => showsPatient).map(({ hash }) => hash));
