import type { Book } from '../../book/index.ts';
import { formatUsng } from '../../geo/index.ts';
import { featureOf } from './features.ts';
import { inertJson } from './inert.ts';
import { type ExportChoice, placedRecords } from './placed.ts';
import { siteFacts } from './site-facts.ts';

/**
 * A book's records that have a place, as the text of a GeoJSON FeatureCollection [source: rfc7946]. Reading it again gives the same
 * records. `contested` names fields with more than one value; sites also carry their grid
 * reference, their last field check and the day of a change since.
 */
export function writeGeoJson(book: Book, choice: ExportChoice): string {
  const facts = siteFacts(book);
  const contested = new Map<string, string[]>();
  for (const { table, id, field } of book.contested) {
    const key = `${table} ${id}`;
    contested.set(key, [...(contested.get(key) ?? []), field]);
  }
  const features = placedRecords(book, choice).map((placed) => {
    const feature = featureOf(placed);
    const fields = contested.get(`${placed.table} ${placed.record.id}`);
    const properties = { ...feature.properties, ...(fields ? { contested: fields } : {}) };
    if (placed.table === 'sites') {
      const { check, changed } = facts.get(placed.record.id)!;
      Object.assign(properties, {
        usng: formatUsng(placed.record.place),
        lastCheckOn: check?.on ?? null,
        lastCheckMethod: check?.method ?? null,
        changedSince: changed.at(-1)?.on ?? null,
      });
    }
    return { ...feature, properties };
  });
  return `${inertJson({ type: 'FeatureCollection', features })}\n`;
}
