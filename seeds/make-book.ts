import { createHash } from 'node:crypto';
import { readFile, writeFile } from 'node:fs/promises';
import { type Book, restoreBook } from '../src/book/index.ts';
import { applyUpdate, emptyState, snapshotOf } from '../src/book/merge/index.ts';
import { logLines, logOfBook } from '../src/io/book-file/log/index.ts';
import { readCrashes, writeBookFile } from '../src/io/index.ts';
import { drillRecords, measurementRecords, signOffRecords } from './book/district-checks.ts';
import { fleetRecords, kitRecords, responseRecords, stationRecords } from './book/district-crews.ts';
import {
  districtBounds,
  eventRecords,
  markRecords,
  placeRecords,
  routeRecords,
  siteRecords,
} from './book/district-places.ts';

/**
 * Makes the demo district's book file from the plain files of a folder and puts it beside them:
 * node config/run.mjs seeds/make-book.ts FOLDER
 */
async function makeBook(folder: string): Promise<void> {
  const json = async (name: string) => JSON.parse(await readFile(`${folder}/${name}`, 'utf8'));
  const [sites, marks, parking, changes] = [
    await json('sites.json'),
    (await json('marks.geojson')).features,
    (await json('parking.geojson')).features,
    (await json('changed-since.geojson')).features,
  ];
  const { measurements } = await json('measurements.json');
  const bounds = districtBounds(sites.sites);
  const crashes = readCrashes(await readFile(`${folder}/crashes.csv`), 'crashes.csv', { bounds, sourceId: 'crashes' });
  const book: Book = restoreBook(
    {
      schema: 'brinkbook/book@1',
      tables: {
        settings: [{ id: 'book', district: sites.district, invented: true, bounds }],
        sites: siteRecords(sites.sites, marks),
        marks: markRecords(sites.sites, marks),
        supportPlaces: placeRecords(sites.sites, parking),
        events: eventRecords(changes),
        ...routeRecords((await json('calibration.json')).roads),
        measurements: measurementRecords(measurements, sites.sites),
        signOffs: signOffRecords(measurements),
        drills: drillRecords((await json('drills.json')).drills),
        fleet: fleetRecords((await json('fleet.json')).fleet),
        ...kitRecords((await json('kit.json')).kits),
        stations: stationRecords((await json('stations.json')).stations),
        ...responseRecords(await json('response.json')),
        sources: [{ id: 'crashes', name: 'Crash records of the demo district (invented)', kind: 'crashes' }],
        crashes: crashes.crashes,
      },
    },
    'the demo district',
  );
  // Another content is another writer, so that devices that took in different ones can still be merged.
  const content = createHash('sha256').update(JSON.stringify(book)).digest('hex').slice(0, 12);
  const updates = logOfBook(book, { actor: `demo-${content}`, who: 'Demo', device: 'demo', atMs: MADE_AT_MS });
  const state = emptyState();
  for (const update of updates) applyUpdate(state, update, 'the demo district');
  const bytes = await writeBookFile(
    { book: snapshotOf(state), log: logLines(updates, { crashes: true }), photo: async () => null },
    { asked: { crashes: true, patientPhotos: true }, writtenAtMs: MADE_AT_MS },
  );
  await writeFile(`${folder}/tamarrow.brinkbook`, bytes);
}

/** The moment that every edit of the demo says, so that the file is the same every time. */
const MADE_AT_MS = Date.UTC(2026, 0, 1);

await makeBook(process.argv[2] ?? '.');
