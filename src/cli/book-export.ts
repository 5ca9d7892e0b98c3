import { type Book, live } from '../book/index.ts';
import { type BookFile, readBook, writeCsv, writeGeoJson, writeGpx, writeKml, writeNeighbour } from '../io/index.ts';
import { fileSource, writeWhole } from '../io/node/index.ts';
import { UserError } from '../units/index.ts';
import { readWord, UsageError } from './arguments.ts';
import { readFilesAndOptions } from './book-arguments.ts';

const formats = ['geojson', 'gpx', 'kml', 'csv', 'neighbour'] as const;

/** `book export FILE --as FORMAT`: what other programs and neighbours can read of a book. */
export async function exportBook(args: string[]): Promise<void> {
  const { files, given } = readFilesAndOptions(args, 1, 'export takes one file', {
    as: { type: 'string' },
    sites: { type: 'string' },
    'with-crashes': { type: 'boolean' },
    'with-patient-photos': { type: 'boolean' },
    units: { type: 'string' },
    out: { type: 'string' },
  });
  const format = readWord('--as', given.as, formats);
  if (!format) throw new UsageError(`--as is missing; it is one of ${formats.join(', ')}.`);
  const units = readWord('--units', given.units, ['us', 'metric'] as const);
  const crashes = given['with-crashes'] === true;
  if (format === 'neighbour' && crashes) throw new UsageError('--with-crashes does not go with neighbour; see --help.');
  if (format !== 'neighbour' && (given['with-patient-photos'] || units)) {
    const option = units ? '--units' : '--with-patient-photos';
    throw new UsageError(
      `${option} goes with neighbour alone: ${format} holds no photos and metric lengths; see --help.`,
    );
  }
  const source = fileSource(files[0]!);
  try {
    const { book, file } = await readBook(source);
    const sites = given.sites === undefined ? null : siteIds(given.sites, book, source.name);
    const choice = { sites, crashes };
    const text = {
      geojson: () => writeGeoJson(book, choice),
      gpx: () => writeGpx(book, choice),
      kml: () => writeKml(book, choice),
      csv: () => writeCsv(book, choice),
      neighbour: async () =>
        writeNeighbour(book, {
          sites,
          patientPhotos: given['with-patient-photos'] === true,
          units: units ?? book.tables.settings[0]?.units ?? 'us',
          photo: await photosOf(file),
        }),
    }[format];
    const made = await text();
    if (given.out === undefined) process.stdout.write(made);
    else {
      await writeWhole(given.out, new TextEncoder().encode(made));
      process.stdout.write(`${given.out}: ${writtenWords(book, sites, crashes)}\n`);
    }
  } finally {
    await source.close?.();
  }
}

/** What went out, and what stayed behind because nobody asked for it. */
function writtenWords(book: Book, chosen: readonly string[] | null, crashes: boolean): string {
  const sites = chosen?.length ?? live(book, 'sites').length;
  const left = crashes ? 0 : live(book, 'crashes').length;
  return `${sites} ${sites === 1 ? 'site' : 'sites'}${left > 0 ? `; ${left} crash ${left === 1 ? 'point' : 'points'} left out` : ''}`;
}

function siteIds(list: string, book: Book, file: string): string[] {
  const known = new Set(live(book, 'sites').map(({ id }) => id));
  const ids = list.split(',').map((id) => id.trim());
  const missing = ids.find((id) => !known.has(id));
  if (missing !== undefined) {
    const some = [...known].slice(0, 10).join(', ');
    throw new UserError(
      'site-id',
      `${file} has no site "${missing.slice(0, 64)}"; its sites are ${some}${known.size > 10 ? ' and more' : ''}.`,
    );
  }
  return ids;
}

async function photosOf(file: BookFile | null): Promise<(hash: string) => Promise<Uint8Array | null>> {
  const photos = new Map<string, Uint8Array>();
  await file?.eachPhoto(async ({ hash, bytes }) => {
    photos.set(hash, bytes);
  });
  return async (hash) => photos.get(hash) ?? null;
}
