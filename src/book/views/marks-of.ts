import type { Mark } from '../marks.ts';
import { type Book, live } from '../schema/index.ts';

/** The marks that a study of a site sees: all of the book's (neighbours' trees hold too), and the site's own patient point. */
export function marksOf(book: Book, siteId: string | null): Mark[] {
  const gone = new Set(book.tables.sites.filter(({ deleted }) => deleted).map(({ id }) => id));
  const marks = live(book, 'marks')
    .filter((mark) => mark.siteId === null || !gone.has(mark.siteId))
    .map(
      ({ id, kind, name, geometry, trunkDiameterM, heightM }): Mark => ({
        id,
        kind,
        name,
        geometry,
        trunkDiameterM,
        heightM,
      }),
    );
  const patient = live(book, 'sites').find(({ id }) => id === siteId)?.patientPoint;
  if (patient) {
    const geometry = { type: 'Point' as const, coordinates: [patient.lon, patient.lat] };
    marks.push({
      id: `${siteId}.patient`,
      kind: 'patient point',
      name: null,
      geometry,
      trunkDiameterM: null,
      heightM: null,
    });
  }
  return marks;
}
