import { type Book, live } from '../../../book/index.ts';
import { placeWords, type SheetPhoto } from '../../../plan/index.ts';
import type { Study } from '../../../study/index.ts';
import type { UnitSystem } from '../../../units/index.ts';
import { sitePhotos } from '../../site-photos.ts';
import { photoHere } from '../source.ts';

/** What the book keeps of a site beside its study. */
export interface BesideStudy {
  /** Landing zone, staging and parking, each a sentence. */
  readonly places: readonly string[];
  /** The first photo without a patient whose bytes are on this device. */
  readonly photos: readonly SheetPhoto[];
}

/** What the book keeps of a study's site; loaded when somebody reads on. */
export async function besideStudy(
  book: Book,
  siteId: string,
  { site }: Study,
  units: UnitSystem,
): Promise<BesideStudy> {
  const own = live(book, 'supportPlaces').filter((place) => place.siteId === siteId);
  return {
    places: own.map((place) => `${placeWords(site, place, units)}.`),
    photos: await sitePhotos(book, siteId, photoHere),
  };
}
