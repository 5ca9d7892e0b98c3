import { gpx, kml } from '@tmcw/togeojson';
import type { Feature, Geometry } from 'geojson';
import { UserError } from '../../units/index.ts';
import { parseXml } from './parse-xml.ts';

/** Features of a GPX or KML text. `count` is the number of elements that can be places: none may get lost on the way. */
export function readXmlFeatures(
  text: string,
  file: string,
): { format: 'GPX' | 'KML'; features: Feature<Geometry | null>[]; lost: number } {
  const document = parseXml(text, file);
  const root = document.documentElement!.localName?.toLowerCase();
  if (root !== 'gpx' && root !== 'kml') {
    throw new UserError('xml-root', `${file} is XML but neither GPX nor KML; choose a GPX or KML file.`);
  }
  const count = (name: string): number => document.getElementsByTagName(name).length;
  let features: Feature<Geometry | null>[];
  try {
    // Both libraries speak of the same document model under two type names.
    const model = document as unknown as globalThis.Document;
    features = root === 'gpx' ? gpx(model).features : kml(model, { skipNullGeometry: false }).features;
  } catch {
    throw new UserError('xml-places', `${file} has a place that cannot be read; export it again.`);
  }
  const places = root === 'gpx' ? count('wpt') + count('rte') + count('trk') : count('Placemark');
  return { format: root === 'gpx' ? 'GPX' : 'KML', features, lost: Math.max(0, places - features.length) };
}
