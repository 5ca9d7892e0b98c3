import { type Book, emptyBook, restoreBook } from '../../src/book/index.ts';
import { parsePosition } from '../../src/geo/index.ts';
import { checkLog, logLines, logOfBook } from '../../src/io/book-file/log/index.ts';
import {
  readBookFile,
  readCrashes,
  readPlaces,
  sha256,
  writeBookFile,
  writeCsv,
  writeGeoJson,
  writeGpx,
  writeKml,
} from '../../src/io/index.ts';
import { memorySource } from '../../src/io/memory/index.ts';
import { sideBySide, span } from './harness.ts';

const SITES = 10_000;
const PHOTOS = 200;
const PHOTO_BYTES = 300_000;
const RUNS = 3;
const asked = { crashes: true, patientPhotos: true };
const whole = { sites: null, crashes: true };

/** A book of 10,000 sites and 200 photos as a file, and in other programs' formats, against parsing its plain JSON. */
export async function benchFiles(print: (line: string) => void): Promise<void> {
  print(
    `Files of a book of ${SITES} sites and ${PHOTOS} photos of ${PHOTO_BYTES / 1000} kB, milliseconds, least and most of ${RUNS}`,
  );
  const photos = new Map<string, Uint8Array<ArrayBuffer>>();
  for (let i = 0; i < PHOTOS; i++) {
    const bytes = new Uint8Array(PHOTO_BYTES).map((_, k) => (k * 7 + i) & 255);
    bytes.set([0xff, 0xd8, 0xff]);
    photos.set(await sha256(bytes), bytes);
  }
  const book = bookOf([...photos.keys()]);
  const plain = JSON.stringify(book);
  const updates = logOfBook(book, { actor: 'a', who: 'a', device: 'a', atMs: 1 });
  const log = logLines(updates, asked);
  const parts = { book, log, photo: async (hash: string) => photos.get(hash) ?? null };
  const file = await writeBookFile(parts, { asked, writtenAtMs: 1 });
  const source = memorySource(file, 'bench');
  const csv = writeCsv(book, whole);
  const csvBytes = new TextEncoder().encode(csv);
  const crashes = new TextEncoder().encode(
    `date,lat,lon,severity\n${Array.from({ length: SITES }, (_, i) => `2020-01-0${1 + (i % 9)},44.${10_000 + i},-128.01,K\n`).join('')}`,
  );
  const message =
    'MVA OVER THE SIDE, LANTERN CREEK RD MM 5.2, 44 00.738N 128 02.736W, 2 PTS, CALLBACK 555-0123 AT 18:05';
  let id = 0;
  const context = { book: emptyBook(), newId: () => `n${++id}` };
  const times = await sideBySide(RUNS, {
    parse: () => JSON.parse(plain).tables.sites.length,
    write: async () => (await writeBookFile(parts, { asked, writtenAtMs: 1 })).length,
    read: async () => (await readBookFile(source)).photoHashes.length,
    log: async () => checkLog(await readBookFile(source), 'bench').size,
    geojson: () => writeGeoJson(book, whole).length,
    gpx: () => writeGpx(book, whole).length,
    kml: () => writeKml(book, whole).length,
    csv: () => writeCsv(book, whole).length,
    csvIn: () => readPlaces(csvBytes, 'bench.csv', context).items.length,
    crashes: () => readCrashes(crashes, 'bench.csv', { bounds: null, sourceId: null }).crashes.length,
    positions: () => {
      let found = 0;
      for (let i = 0; i < 1000; i++) found += parsePosition(message).ok ? 1 : 0;
      return found;
    },
  });
  const row = (name: string, key: keyof typeof times): void =>
    print(`  ${name.padEnd(44)} ${span(times[key])} = ${(times[key].min / times.parse.min).toFixed(1)} × parsing`);
  print(
    `plain book ${(plain.length / 1e6).toFixed(1)} MB, file ${(file.length / 1e6).toFixed(1)} MB: parsing the plain book ${span(times.parse)}`,
  );
  row('writing the file', 'write');
  row('reading it and checking everything', 'read');
  row('the same and working its log out', 'log');
  row('as GeoJSON', 'geojson');
  row('as GPX', 'gpx');
  row('as KML', 'kml');
  row('as CSV', 'csv');
  row('reading that CSV into a preview', 'csvIn');
  row(`reading ${SITES} crash records`, 'crashes');
  row('1000 positions in dispatch messages', 'positions');
}

function bookOf(hashes: readonly string[]): Book {
  return restoreBook(
    {
      schema: 'brinkbook/book@1',
      tables: {
        sites: Array.from({ length: SITES }, (_, i) => ({
          id: `s${i}`,
          name: `Site ${i}`,
          place: { lon: -128 + (i % 100) / 1000, lat: 44 + Math.floor(i / 100) / 1000, sideAzimuthDeg: i % 360 },
          roadName: 'Lantern Creek Road',
          notes: 'Loose rock above the edge, a soft shoulder, no room to haul straight.',
          patientPoint: { lon: -128, lat: 44 },
        })),
        photos: hashes.map((hash, i) => ({
          id: `p${i}`,
          siteId: `s${i}`,
          hash,
          type: 'image/jpeg',
          widthPx: 10,
          heightPx: 10,
          sizeBytes: PHOTO_BYTES,
          showsPatient: false,
        })),
      },
    },
    'bench',
  );
}
