import { arrivalsOf, type Book, fleetOf, kitsOf, ratesOf, responseOf, settingsOf } from '../book/index.ts';
import type { Resources } from './inputs.ts';

/** What a book says of who comes to a road, with what; parts that it lacks are the shipped ones, and then it says so. */
export function resourcesOfBook(book: Book, roadName: string | null): Resources {
  const fleet = fleetOf(book);
  const kits = kitsOf(book);
  const arrivals = arrivalsOf(book, roadName);
  return {
    how: fleet.shipped || kits.shipped || arrivals.shipped ? 'shipped' : 'book',
    fleet: fleet.value,
    kits: kits.value,
    arrivals: arrivals.value,
    response: responseOf(book).value,
    rates: ratesOf(book),
    fullBelay: settingsOf(book)?.fullBelay ?? false,
  };
}
