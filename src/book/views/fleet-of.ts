import { type Apparatus, defaultFleet } from '../fleet.ts';
import { type Book, live } from '../schema/index.ts';
import { type Given, given } from './given.ts';

/** The book's fleet. */
export const fleetOf = (book: Book): Given<readonly Apparatus[]> =>
  given(
    live(book, 'fleet').map(({ deleted: _, ...apparatus }) => apparatus),
    defaultFleet,
  );
