import {
  arrivalsOf,
  type Book,
  fleetOf,
  type Given,
  kitsOf,
  live,
  ratesOf,
  responseOf,
  settingsOf,
} from '../book/index.ts';
import type { Resources } from '../study/index.ts';

/**
 * Who comes to a road with what: each part by the book, else as the district's files or the shipped ones have it (`files`). "shipped"
 * where any of it is shipped.
 */
export function resourcesWith(book: Book, road: string | null, files: Resources): Resources {
  const fleet = fleetOf(book);
  const kits = kitsOf(book);
  const arrivals = arrivalsOf(book, road);
  const response = responseOf(book);
  const own = <T>(part: Given<T>, other: T): T => (part.shipped ? other : part.value);
  const isOwn = ![fleet, kits, arrivals, response].some(({ shipped }) => shipped);
  return {
    ...files,
    how: isOwn ? 'book' : files.how,
    fleet: own(fleet, files.fleet),
    kits: own(kits, files.kits),
    arrivals: own(arrivals, files.arrivals),
    response: own(response, files.response),
    rates: live(book, 'rates').length > 0 ? ratesOf(book) : files.rates,
    fullBelay: settingsOf(book)?.fullBelay ?? files.fullBelay ?? false,
  };
}
