import type { Book } from '../../book/index.ts';
import { formatUsng } from '../../geo/index.ts';
import { featureOf } from './features.ts';
import { inertJson } from './inert.ts';
import { type ExportChoice, lastChecks, placedRecords } from './placed.ts';

/**
 * A book's records that have a place, as the text of a GeoJSON FeatureCollection [source: rfc7946]. Reading it again gives the same
 * records. `contested` names fields with more than one value; sites also carry their grid reference and last field check.
 */
export function writeGeoJson(book: Book, choice: ExportChoice): string {
  const checks = lastChecks(book);
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
      const check = checks.get(placed.record.id);
      Object.assign(properties, {
        usng: formatUsng(placed.record.place),
        lastCheckOn: check?.on ?? null,
        lastCheckMethod: check?.method ?? null,
      });
    }
    return { ...feature, properties };
  });
  return `${inertJson({ type: 'FeatureCollection', features })}\n`;
}
