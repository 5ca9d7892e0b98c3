import { type Book, live, type PhotoRecord } from '../../book/index.ts';

/** What leaves a book only when somebody asks for it. */
export interface Asked {
  readonly crashes: boolean;
  readonly patientPhotos: boolean;
}

/** A plain book without the records that nobody asked for: crashes, and photos that show a patient. */
export function withoutUnasked(book: Book, asked: Asked): Book {
  const patients = new Set(
    asked.patientPhotos ? [] : book.tables.photos.filter(({ showsPatient }) => showsPatient).map(({ id }) => id),
  );
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
  // The same bytes may also stand under a record that says it shows a patient.
  const patients = new Set(book.tables.photos.filter(({ showsPatient }) => showsPatient).map(({ hash }) => hash));
  return shown.filter(({ hash }) => asked.patientPhotos || !patients.has(hash));
};
