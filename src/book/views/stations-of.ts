import { type Book, live } from '../schema/index.ts';
import type { Station } from '../stations.ts';

/** The book's stations; none are shipped. */
export const stationsOf = (book: Book): Station[] =>
  live(book, 'stations').map(({ id, name, at, apparatusIds, kitIds, turnoutMin, mutualAid }) => ({
    id,
    name,
    ...at,
    apparatusIds,
    kitIds,
    turnoutMin,
    mutualAid,
  }));
