import { type Book, live, rateInBounds, type TableName, tableNames } from '../schema/index.ts';

/** Fields that hold the id of a record, or ids, and of which table. */
const references: Readonly<Record<string, TableName>> = {
  siteId: 'sites',
  markId: 'marks',
  kitId: 'kits',
  kitIds: 'kits',
  areaId: 'responseAreas',
  apparatusId: 'fleet',
  apparatusIds: 'fleet',
  routeId: 'routes',
  stationId: 'stations',
  sourceId: 'sources',
  angleRuleId: 'angleRules',
  measurementIds: 'measurements',
};

/** Sentences on what in a book points at nothing or lies out of bounds; none of it keeps the book from being used. */
export function looseEnds(book: Book): string[] {
  const ids = new Map(tableNames.map((table) => [table, new Set(live(book, table).map(({ id }) => id))]));
  const found: string[] = [];
  for (const table of tableNames) {
    for (const record of live(book, table)) {
      for (const [field, target] of Object.entries(references)) {
        const value = (record as Record<string, unknown>)[field];
        for (const id of Array.isArray(value) ? value : [value]) {
          if (typeof id !== 'string' || ids.get(target)!.has(id)) continue;
          found.push(
            `${table} "${record.id}" names "${id}" of ${target}, which is not in the book; choose another or clear it.`,
          );
        }
      }
    }
  }
  for (const rate of live(book, 'rates')) {
    if (!rateInBounds(rate))
      found.push(`rates "${rate.id}" is set to ${rate.value}, out of its bounds; the shipped value counts.`);
  }
  return found;
}
