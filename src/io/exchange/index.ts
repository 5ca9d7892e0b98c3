export type { ExportChoice } from './placed.ts';
export type { Preview, PreviewItem, Skipped } from './preview.ts';
export { type CrashPreview, readCrashes } from './read-crashes.ts';
export { markFrom, type PlacesContext, readPlaces, siteFrom } from './read-places.ts';
export { writeCsv } from './write-csv.ts';
export { writeGeoJson } from './write-geojson.ts';
export { writeGpx } from './write-gpx.ts';
export { writeKml } from './write-kml.ts';
export { type NeighbourChoice, writeNeighbour } from './write-neighbour.ts';
