import type { Book, Contested } from '../schema/index.ts';

/** Tables whose records every site's result rests on. */
const everywhere: readonly string[] = [
  'settings',
  'fleet',
  'kits',
  'ropes',
  'kitItems',
  'stations',
  'responseAreas',
  'arrivals',
  'responseRows',
  'angleRules',
  'rates',
  'events',
  'sources',
];

/** Contested fields that a site's result rests on: its own, those of what belongs to it, and the district's. Each is a check. */
export function contestedForSite(book: Book, siteId: string): Contested[] {
  if (book.contested.length === 0) return [];
  const own = new Set([`sites/${siteId}`]);
  for (const table of ['marks', 'measurements', 'corrections', 'signOffs', 'photos', 'supportPlaces'] as const) {
    for (const record of book.tables[table]) if (record.siteId === siteId) own.add(`${table}/${record.id}`);
  }
  return book.contested.filter(({ table, id }) => own.has(`${table}/${id}`) || everywhere.includes(table));
}
