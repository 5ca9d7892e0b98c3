import type { Position } from 'geojson';
import type { Book } from '../../book/index.ts';
import { CAUTION } from '../../study/index.ts';
import { inertXml } from './inert.ts';
import { notesOf } from './notes-of.ts';
import { type ExportChoice, placedRecords, titleOf } from './placed.ts';
import { siteFacts } from './site-facts.ts';

/**
 * A book's records that have a place, as GPX 1.1 [source: gpx11]: points are waypoints, lines and the rims of areas are tracks. A site's
 * patient point is a waypoint of its own.
 */
export function writeGpx(book: Book, choice: ExportChoice): string {
  const facts = siteFacts(book);
  const points: string[] = [];
  const tracks: string[] = [];
  for (const placed of placedRecords(book, choice)) {
    const { name, kind } = titleOf(placed);
    const about = [
      `<name>${inertXml(name)}</name>`,
      `<desc>${inertXml(notesOf(placed, facts).join('\n'))}</desc>`,
      `<type>${inertXml(kind)}</type>`,
    ].join('');
    const { geometry } = placed;
    if (geometry.type === 'Point') points.push(waypoint(geometry.coordinates, about));
    else tracks.push(`<trk>${about}${linesOf(geometry).map(segment).join('')}</trk>`);
    if (placed.table === 'sites' && placed.record.patientPoint) {
      const { lon, lat } = placed.record.patientPoint;
      points.push(waypoint([lon, lat], `<name>${inertXml(`${name}: patient point`)}</name><type>patient point</type>`));
    }
  }
  return `<?xml version="1.0" encoding="UTF-8"?>
<gpx version="1.1" creator="Brinkbook" xmlns="http://www.topografix.com/GPX/1/1">
<metadata><name>${inertXml(book.tables.settings[0]?.district || 'Brinkbook')}</name><desc>${inertXml(CAUTION)}</desc></metadata>
${[...points, ...tracks].join('\n')}
</gpx>
`;
}

const attributes = ([lon, lat]: Position): string => `lat="${lat}" lon="${lon}"`;
const waypoint = (at: Position, about: string): string => `<wpt ${attributes(at)}>${about}</wpt>`;
const segment = (line: Position[]): string =>
  `<trkseg>${line.map((at) => `<trkpt ${attributes(at)}/>`).join('')}</trkseg>`;

/** Every line of a shape: itself, or the rims of its areas. */
export function linesOf(geometry: GeoJSON.Geometry): Position[][] {
  switch (geometry.type) {
    case 'LineString':
      return [geometry.coordinates];
    case 'Polygon':
      return geometry.coordinates;
    case 'MultiPolygon':
      return geometry.coordinates.flat();
    default:
      return [];
  }
}
