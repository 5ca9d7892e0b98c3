import {
  type Book,
  defaultArrivals,
  defaultFleet,
  defaultKits,
  defaultResponse,
  live,
  type TableName,
} from '../../book/index.ts';
import type { Change } from '../../book/merge/index.ts';

/** Parts of the book that are shipped until a district writes its own. */
export type ShippedPart = 'kit' | 'fleet' | 'arrivals' | 'response';

/** True while a part of the book is the shipped one. */
export function isShipped(book: Book, part: ShippedPart): boolean {
  const table: Record<ShippedPart, TableName> = {
    kit: 'kits',
    fleet: 'fleet',
    arrivals: 'arrivals',
    response: 'responseRows',
  };
  return live(book, table[part]).length === 0;
}

/** The changes that write the shipped part into the book, so that it can be made the district's own line by line. */
export function shippedAsOwn(part: ShippedPart): Change[] {
  switch (part) {
    case 'kit':
      return defaultKits.flatMap(({ id, name, ropes, items }): Change[] => [
        { table: 'kits', id, set: { name, deleted: false } },
        ...ropes.map(
          (rope, i): Change => ({
            table: 'ropes',
            id: `${id}-rope-${i + 1}`,
            set: { kitId: id, ...rope, deleted: false },
          }),
        ),
        ...items.map(
          (item, i): Change => ({
            table: 'kitItems',
            id: `${id}-item-${i + 1}`,
            set: { kitId: id, ...item, deleted: false },
          }),
        ),
      ]);
    case 'fleet':
      return defaultFleet.map(({ id, ...set }): Change => ({ table: 'fleet', id, set: { ...set, deleted: false } }));
    case 'arrivals':
      return [
        { table: 'responseAreas', id: 'all-roads', set: { name: 'All roads', roads: [], deleted: false } },
        ...defaultArrivals.map(
          (arrival, i): Change => ({
            table: 'arrivals',
            id: `arrival-${i + 1}`,
            set: { areaId: 'all-roads', ...arrival, deleted: false },
          }),
        ),
      ];
    case 'response':
      return defaultResponse.map(({ id, when, ...set }, i): Change => {
        const {
          planAs = null,
          ropeShort = null,
          peopleShort = null,
          water = null,
          laneClosed = null,
          hazards = null,
        } = when;
        const all = { planAs, ropeShort, peopleShort, water, laneClosed, hazards };
        return { table: 'responseRows', id, set: { order: i + 1, when: all, ...set, deleted: false } };
      });
  }
}
