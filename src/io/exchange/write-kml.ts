import type { Geometry, Position } from 'geojson';
import type { Book } from '../../book/index.ts';
import { CAUTION } from '../../study/index.ts';
import { inertXml } from './inert.ts';
import { notesOf } from './notes-of.ts';
import { type ExportChoice, type Placed, type PlacedTable, placedRecords, placedTables, titleOf } from './placed.ts';
import { type SiteFacts, siteFacts } from './site-facts.ts';

/** A book's records that have a place, as KML 2.2 [source: kml22], one folder a table. A site's patient point is a placemark of its own. */
export function writeKml(book: Book, choice: ExportChoice): string {
  const facts = siteFacts(book);
  const placed = placedRecords(book, choice);
  const folders = placedTables.flatMap((table) => {
    const marks = placed.filter((one) => one.table === table).map((one) => placemarks(one, facts));
    return marks.length > 0 ? [`<Folder><name>${folderNames[table]}</name>\n${marks.join('\n')}\n</Folder>`] : [];
  });
  return `<?xml version="1.0" encoding="UTF-8"?>
<kml xmlns="http://www.opengis.net/kml/2.2">
<Document><name>${inertXml(book.tables.settings[0]?.district || 'Brinkbook')}</name><description>${inertXml(CAUTION)}</description>
${folders.join('\n')}
</Document>
</kml>
`;
}

const folderNames: Readonly<Record<PlacedTable, string>> = {
  sites: 'Sites',
  marks: 'Marks',
  supportPlaces: 'Landing zones, staging, parking',
  stations: 'Stations',
  mileMarkers: 'Mile markers',
  events: 'Changes of ground or road',
  crashes: 'Crashes',
};

function placemarks(placed: Placed, facts: ReadonlyMap<string, SiteFacts>): string {
  const { name, kind } = titleOf(placed);
  const own = placemark(name, [kind, ...notesOf(placed, facts)].join('\n'), placed.geometry);
  if (placed.table !== 'sites' || !placed.record.patientPoint) return own;
  const { lon, lat } = placed.record.patientPoint;
  return `${own}\n${placemark(`${name}: patient point`, 'patient point', { type: 'Point', coordinates: [lon, lat] })}`;
}

const placemark = (name: string, about: string, geometry: Geometry): string =>
  `<Placemark><name>${inertXml(name)}</name><description>${inertXml(about)}</description>${shape(geometry)}</Placemark>`;

function shape(geometry: Geometry): string {
  switch (geometry.type) {
    case 'Point':
      return `<Point>${coordinates([geometry.coordinates])}</Point>`;
    case 'LineString':
      return `<LineString><tessellate>1</tessellate>${coordinates(geometry.coordinates)}</LineString>`;
    case 'Polygon':
      return polygon(geometry.coordinates);
    case 'MultiPolygon':
      return `<MultiGeometry>${geometry.coordinates.map(polygon).join('')}</MultiGeometry>`;
    default:
      return '';
  }
}

const polygon = (rings: Position[][]): string =>
  `<Polygon>${rings.map((ring, i) => `<${i === 0 ? 'outer' : 'inner'}BoundaryIs><LinearRing>${coordinates(ring)}</LinearRing></${i === 0 ? 'outer' : 'inner'}BoundaryIs>`).join('')}</Polygon>`;

const coordinates = (line: Position[]): string =>
  `<coordinates>${line.map(([lon, lat]) => `${lon},${lat}`).join(' ')}</coordinates>`;
