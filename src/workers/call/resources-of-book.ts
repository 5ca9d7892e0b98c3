import { arrivalsOf, type Book, fleetOf, kitsOf, ratesOf, responseOf, settingsOf } from '../../book/index.ts';
import type { Resources } from '../../study/index.ts';

/**
 * Who comes to a road with what, by a book; "shipped" where any of it had to be taken from what is shipped. Null where the book holds
 * nothing of the kind.
 */
export function resourcesOfBook(book: Book, road: string | null): Resources | null {
  const fleet = fleetOf(book);
  const kits = kitsOf(book);
  const arrivals = arrivalsOf(book, road);
  const response = responseOf(book);
  const all = [fleet, kits, arrivals, response];
  if (all.every((given) => given.shipped)) return null;
  const shipped = all.some((given) => given.shipped);
  return {
    how: shipped ? 'shipped' : 'book',
    fleet: fleet.value,
    kits: kits.value,
    arrivals: arrivals.value,
    response: response.value,
    rates: ratesOf(book),
    fullBelay: settingsOf(book)?.fullBelay ?? false,
  };
}
