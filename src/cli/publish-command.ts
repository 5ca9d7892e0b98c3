import { type Book, live, worseOfContested } from '../book/index.ts';
import { type BookFile, readBook } from '../io/index.ts';
import { type FolderInMaking, fileSource, inflateNatively, publishFolder } from '../io/node/index.ts';
import {
  type AskedToPublish,
  indexPage,
  type Publication,
  publishedBook,
  publishedPaths,
  publishedRoads,
  publishedWithout,
  READABLE_BY_ANYONE,
  withoutWords,
} from '../io/publish/index.ts';
import { UserError } from '../units/index.ts';
import { addressOf, needed, readOptions, readWord } from './arguments.ts';
import type { BuiltApp } from './built-app.ts';
import { listedFiles, readRoadsFile, sheetPhotos } from './district-files.ts';
import { copyApp } from './publish-app.ts';
import { cutElevation } from './publish-elevation.ts';
import { withPhotosThere, writePhotos } from './publish-photos.ts';
import { writeSheets } from './publish-sheets.ts';
import { GROUND_HALF_M, workOutSites } from './publish-studies.ts';

export const publishHelp = `publish: a folder of static files that any web host or object store can serve, read-only

  npm run -s brinkbook -- publish --book FILE --out FOLDER [options]

  --book FILE             the book whose sites are published
  --out FOLDER            a new or empty folder, or a former publication, which is replaced once the new one is whole
  --elevation FILE|URL    elevation raster (GeoTIFF), several may be given; without it those that the book lists
  --roads FILE            roads as GeoJSON or Overpass JSON; without it the file that the book lists
  --with LIST             what stays out otherwise: crashes, patient-photos, plate-photos, separated by commas
  --address URL           where the folder will be served; codes on the sheets lead there (else the book's own address)
  --paper letter|a4       size of the sheets (default letter)

Nothing is asked of whoever opens it: anyone with the address can read all of it. See docs/publishing.md.
`;

const options = {
  book: { type: 'string' },
  out: { type: 'string' },
  elevation: { type: 'string', multiple: true },
  roads: { type: 'string' },
  with: { type: 'string', multiple: true },
  address: { type: 'string' },
  paper: { type: 'string' },
} as const;

/** Runs `publish`; throws `UsageError` or `UserError`. Progress goes to standard error. */
export async function publishCommand(args: string[], app: BuiltApp): Promise<void> {
  const given = readOptions(args, options);
  const bookFile = needed('--book', given.book);
  const out = needed('--out', given.out);
  const asked = readAsked(given.with);
  const paper = readWord('--paper', given.paper, ['letter', 'a4'] as const) ?? 'letter';
  const address = addressOf('--address', given.address);
  inflateNatively();
  const source = fileSource(bookFile);
  const folder = await publishFolder(out);
  try {
    const { book: asKept, file } = await readBook(source);
    const book = worseOfContested(asKept);
    if (live(book, 'sites').length === 0)
      throw new UserError('no-site', `${bookFile} holds no site; there is nothing to publish.`);
    const built = app.folder();
    if (!built) throw new UserError('build', 'The call view could not be built; see the lines above.');
    const publication = await writeAll(folder, {
      ...{ book, file, asked, paper },
      address,
      elevation: given.elevation ?? listedFiles(book, 'elevation', '--elevation'),
      roads: given.roads ?? listedFiles(book, 'roads', '--roads')[0]!,
    });
    await copyApp(built, app.policy, folder);
    await folder.finish();
    process.stdout.write(writtenWords(out, publication));
  } catch (error) {
    await folder.drop();
    throw error;
  } finally {
    await source.close?.();
  }
}

interface ToWrite {
  readonly book: Book;
  readonly file: BookFile | null;
  readonly asked: AskedToPublish;
  readonly paper: 'letter' | 'a4';
  readonly address: string | null;
  readonly elevation: readonly string[];
  readonly roads: string;
}

/** Writes everything but the app: studies, sheets, ground, roads, book, list and first page. */
async function writeAll(folder: FolderInMaking, asked: ToWrite): Promise<Publication> {
  const network = await readRoadsFile(asked.roads);
  const book = withPhotosThere(publishedBook(asked.book, asked.asked), asked.file);
  const roads = publishedRoads(network);
  const worked = await workOutSites(folder, { ...asked, book, roads, facts: asked.book }, say);
  say(`Cutting the ground around ${worked.pack.sites.length} sites.`);
  const elevation = await cutElevation(folder, asked.elevation, asked.book, worked.pack.sites);
  const photos = await sheetPhotos(
    asked.file,
    worked.pack.sites.map(({ id }) => id),
    book.tables.photos,
  );
  await writeSheets(folder, { ...asked, book, worked, photos, network });
  const publication: Publication = {
    schema: 'brinkbook/publication@1',
    pack: worked.pack,
    stems: worked.stems,
    notWorkedOut: worked.notWorkedOut,
    elevation,
    groundHalfM: GROUND_HALF_M,
    without: publishedWithout(asked.book, asked.asked),
  };
  await writePhotos(folder, book, asked.file);
  await folder.write(publishedPaths.book, JSON.stringify(book));
  await folder.write(publishedPaths.roads, roads);
  await folder.write(publishedPaths.publication, JSON.stringify(publication));
  await folder.write('index.html', indexPage(publication));
  return publication;
}

const withWords = ['crashes', 'patient-photos', 'plate-photos'] as const;

function readAsked(texts: readonly string[] = []): AskedToPublish {
  const words = texts.flatMap((text) => text.split(',')).map((word) => readWord('--with', word.trim(), withWords));
  const has = (word: (typeof withWords)[number]): boolean => words.includes(word);
  return { crashes: has('crashes'), patientPhotos: has('patient-photos'), platePhotos: has('plate-photos') };
}

const say = (line: string): void => void process.stderr.write(`${line}\n`);

function writtenWords(out: string, { pack, notWorkedOut, without }: Publication): string {
  const failed = notWorkedOut.map(({ id, why }) => `  ${id}: ${why}\n`);
  const of = failed.length > 0 ? `, ${failed.length} of them not worked out:\n${failed.join('')}` : '. ';
  return `${out}: ${pack.sites.length} ${pack.sites.length === 1 ? 'site' : 'sites'}${of}${READABLE_BY_ANYONE}${withoutWords(without)}\n`;
}
