import type { Book, BookTables } from '../schema/index.ts';

/**
 * A book with only what concerns one site: of each table whose records belong to a site, that site's; the other tables whole (events,
 * mile markers, card lines, kit). For handing on, never for writing back.
 */
export function bookOfSite(book: Book, siteId: string): Book {
  const concerns = (record: { readonly id: string; readonly siteId?: string | null }, table: string): boolean =>
    table === 'sites' ? record.id === siteId : (record.siteId ?? siteId) === siteId;
  const tables = Object.entries(book.tables).map(([table, records]) => [
    table,
    (records as readonly { id: string }[]).filter((record) => concerns(record, table)),
  ]);
  return { ...book, tables: Object.fromEntries(tables) as unknown as BookTables };
}
