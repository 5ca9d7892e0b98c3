import type { Feature, Geometry } from 'geojson';
import { type Book, readRecord, recordedMarkKinds } from '../../book/index.ts';
import type { DistrictBounds } from '../../geo/index.ts';
import { UserError } from '../../units/index.ts';
import { decodeText } from './decode-text.ts';
import { isOwnFeature, recordOf } from './features.ts';
import { placeQuestion, readPair } from './place-question.ts';
import { type PlacedTable, placedTables } from './placed.ts';
import { MOST_ITEMS, type Preview, type PreviewItem, type Skipped } from './preview.ts';
import { readCsvFeatures } from './read-csv-features.ts';
import { readGeoJsonFeatures } from './read-geojson-features.ts';
import { readXmlFeatures } from './read-xml-features.ts';
import { isZip, unpackKmz } from './unpack-kmz.ts';

/** What reading a file of places needs beside its bytes. */
export interface PlacesContext {
  /** The book that it would be added to: for its bounds and for ids that it already has. */
  readonly book: Book;
  /** A new random id for each record that brings none. */
  newId(): string;
}

/** The same with the ids that the book has, table by table. */
interface Known extends PlacesContext {
  readonly ids: ReadonlyMap<PlacedTable, ReadonlySet<string>>;
}

/**
 * What a GeoJSON, GPX, KML (or KMZ) or CSV file of places would add to a book; nothing is applied. A file that a book wrote gives its
 * records back; of any other file each point is a site whose side somebody must give, or a mark where it says a kind of mark.
 * Throws a `UserError` of one sentence for a file that cannot be read at all.
 */
export function readPlaces(bytes: Uint8Array, file: string, context: PlacesContext): Preview {
  const { text, guessed } = decodeText(isZip(bytes) ? unpackKmz(bytes, file) : bytes, file);
  const { format, features, skipped, remarks } = featuresOf(text, file);
  if (features.length > MOST_ITEMS) {
    throw new UserError(
      'places-many',
      `${file} has ${features.length} places, over the ${MOST_ITEMS} that are read; split it.`,
    );
  }
  const bounds = context.book.tables.settings[0]?.bounds ?? null;
  const ids = new Map(placedTables.map((table) => [table, new Set(context.book.tables[table].map(({ id }) => id))]));
  const known: Known = { ...context, newId: () => context.newId(), ids };
  const items: PreviewItem[] = [];
  const left: Skipped[] = [...skipped];
  for (const { where, feature } of features) {
    const item = itemOf(feature, where, file, known, bounds);
    if ('why' in item) left.push(item);
    else items.push(item);
  }
  const words = guessed ? ['Its letters were read as Windows-1252; look at the names.'] : [];
  return { format, items, skipped: left, remarks: [...remarks, ...words] };
}

/** A feature and where it stands in its file. */
interface Found {
  readonly where: string;
  readonly feature: Feature<Geometry | null>;
}

interface Features {
  readonly format: Preview['format'];
  readonly features: readonly Found[];
  readonly skipped: readonly Skipped[];
  readonly remarks: readonly string[];
}

function featuresOf(text: string, file: string): Features {
  const start = text.replace(/^\uFEFF/, '').trimStart();
  if (start.startsWith('{') || start.startsWith('['))
    return { format: 'GeoJSON', skipped: [], remarks: [], features: readGeoJsonFeatures(text, file) };
  if (!start.startsWith('<')) return { format: 'CSV', ...readCsvFeatures(text, file) };
  const { format, features, lost } = readXmlFeatures(text, file);
  return {
    format,
    features: features.map((feature, i) => ({ where: `place ${i + 1}`, feature })),
    skipped: Array.from({ length: lost }, () => ({ where: 'a place', why: 'has no usable position' })),
    remarks: [],
  };
}

function itemOf(
  feature: Feature<Geometry | null>,
  where: string,
  file: string,
  context: Known,
  bounds: DistrictBounds | null,
): PreviewItem | Skipped {
  const properties = (feature.properties ?? {}) as Record<string, unknown>;
  if (isOwnFeature(properties)) return ownItem(feature as Feature, where, file, context, bounds);
  const words = (names: readonly string[], most: number): string => {
    const found = names
      .map((name) => (Object.hasOwn(properties, name) ? properties[name] : undefined))
      .find((value) => value !== undefined && value !== null && value !== '');
    return plainWords(found).slice(0, most);
  };
  const name = words(['name', 'Name', 'NAME', 'title', 'label'], 200);
  const notes = words(['notes', 'description', 'desc', 'cmt', 'comment'], 20_000);
  const kind = recordedMarkKinds.find((known) => known === words(['kind', 'type'], 40).toLowerCase()) ?? null;
  const { geometry } = feature;
  if (geometry?.type !== 'Point') {
    if (kind === null || (geometry?.type !== 'LineString' && geometry?.type !== 'Polygon')) {
      return {
        where,
        why: `${name ? `"${name}" ` : ''}is no point${geometry ? ` but a ${geometry.type}` : ' and has no position'}`,
      };
    }
    return markItem({ where, name, notes, kind, geometry }, file, context, bounds);
  }
  const read = readPair(geometry.coordinates, bounds);
  if (typeof read === 'string') return { where, why: read };
  const point: Geometry = { type: 'Point', coordinates: [read.position.lon, read.position.lat] };
  if (kind !== null)
    return {
      ...markItem({ where, name, notes, kind, geometry: point }, file, context, bounds),
      question: read.question,
    };
  const azimuth = Number(properties.sideAzimuthDeg ?? properties.side_azimuth_deg ?? Number.NaN);
  const item: PreviewItem = {
    where,
    name: name || where,
    geometry: point,
    notes,
    ready: null,
    wants: 'side',
    kind: null,
    question: read.question,
    exists: false,
  };
  if (!(azimuth >= 0 && azimuth < 360)) return item;
  return {
    ...item,
    wants: null,
    ready: siteFrom(item, { sideAzimuthDeg: azimuth, roadName: null }, context.newId(), file),
  };
}

/**
 * The site that an item of a preview becomes once somebody has said to which side it drops, degrees true, and on which road it lies.
 * Throws a `UserError` where the item is no point.
 */
export function siteFrom(
  item: Pick<PreviewItem, 'name' | 'geometry' | 'notes'>,
  { sideAzimuthDeg, roadName }: { readonly sideAzimuthDeg: number; readonly roadName: string | null },
  id: string,
  file: string,
): NonNullable<PreviewItem['ready']> {
  const { name, geometry, notes } = item;
  const [lon, lat] = geometry.type === 'Point' ? geometry.coordinates : [];
  const site = { id, name, place: { lon, lat, sideAzimuthDeg }, roadName, notes };
  return { table: 'sites', record: readRecord('sites', site, file) };
}

/** The mark that an item of a preview becomes once somebody has said which kind it is; `siteId` null for the district's. */
export function markFrom(
  item: Pick<PreviewItem, 'name' | 'geometry' | 'notes'>,
  kind: NonNullable<PreviewItem['kind']>,
  siteId: string | null,
  id: string,
  file: string,
): NonNullable<PreviewItem['ready']> {
  const { name, geometry, notes } = item;
  return {
    table: 'marks',
    record: readRecord('marks', { id, siteId, kind, name: name || null, geometry, notes }, file),
  };
}

function markItem(
  given: { where: string; name: string; notes: string; kind: NonNullable<PreviewItem['kind']>; geometry: Geometry },
  file: string,
  context: PlacesContext,
  bounds: DistrictBounds | null,
): PreviewItem | Skipped {
  try {
    const ready = markFrom(given, given.kind, null, context.newId(), file);
    return { ...given, ready, wants: null, question: placeQuestion(given.geometry, bounds), exists: false };
  } catch (error) {
    return skippedFor(error, given.where);
  }
}

function ownItem(
  feature: Feature,
  where: string,
  file: string,
  { ids }: Known,
  bounds: DistrictBounds | null,
): PreviewItem | Skipped {
  try {
    const ready: { table: PlacedTable; record: { id: string } } = recordOf(feature, file);
    const record = ready.record as { name?: string | null; notes?: string };
    const exists = ids.get(ready.table)!.has(ready.record.id);
    return {
      where,
      name: record.name ?? ready.record.id,
      geometry: feature.geometry,
      notes: record.notes ?? '',
      ready: ready as NonNullable<PreviewItem['ready']>,
      wants: null,
      kind: null,
      question: placeQuestion(feature.geometry, bounds),
      exists,
    };
  } catch (error) {
    return skippedFor(error, where);
  }
}

function skippedFor(error: unknown, where: string): Skipped {
  if (error instanceof UserError) return { where, why: error.message };
  throw error;
}

/** Plain text of a property: markup of an HTML description taken out, half characters replaced. */
function plainWords(value: unknown): string {
  const html = typeof value === 'object' && value !== null && 'value' in value ? value.value : null;
  const text = html === null ? value : String(html).replace(/<[^>]*>/g, ' ');
  if (typeof text !== 'string' && typeof text !== 'number') return '';
  return String(text)
    .trim()
    .replace(/\p{Surrogate}/gu, '\uFFFD');
}
