import { defaultKits, type Kit } from '../kit.ts';
import { type Book, live } from '../schema/index.ts';
import { type Given, given } from './given.ts';

/** The book's kits with their ropes and items. */
export function kitsOf(book: Book): Given<readonly Kit[]> {
  const ropes = live(book, 'ropes');
  const items = live(book, 'kitItems');
  const kits = live(book, 'kits').map(
    ({ id, name }): Kit => ({
      id,
      name,
      ropes: ropes
        .filter(({ kitId }) => kitId === id)
        .map(({ lengthM, diameterMm, ratedKn, count }) => ({ lengthM, diameterMm, ratedKn, count })),
      items: items
        .filter(({ kitId }) => kitId === id)
        .map(({ kind, ratedKn, lengthM, count }) => ({ kind, ratedKn, lengthM, count })),
    }),
  );
  return given(kits, defaultKits);
}
