import { readFile } from 'node:fs/promises';
import { type Book, live, type PhotoRecord, type SourceRecord } from '../book/index.ts';
import { type BookFile, type ByteSource, type ElevationOptions, readRoads } from '../io/index.ts';
import { fileSource } from '../io/node/index.ts';
import { urlSource } from '../io/web/index.ts';
import type { SheetPhoto } from '../plan/index.ts';
import type { RoadNetwork } from '../road/index.ts';
import { UserError } from '../units/index.ts';
import { UsageError } from './arguments.ts';

/** Files of a kind that the book lists, with an address; `UsageError` names the option where it lists none. */
export function listedFiles(book: Book, kind: 'elevation' | 'roads', option: string): string[] {
  const addresses = live(book, 'sources').flatMap((one) => (one.kind === kind && one.address ? [one.address] : []));
  if (addresses.length > 0) return addresses;
  throw new UsageError(`${option} is missing, and the book lists no ${kind} with an address; see --help.`);
}

/** Reads a road file; `UserError` where it cannot be read or is none. */
export async function readRoadsFile(path: string): Promise<RoadNetwork> {
  return readRoads(await readTextFile(path, 'roads file'), path);
}

/** Text of a file; `what` is its name in the sentence of a `UserError`. */
async function readTextFile(path: string, what: string): Promise<string> {
  try {
    return await readFile(path, 'utf8');
  } catch (cause) {
    throw new UserError('no-file', `The ${what} ${path} cannot be read; check the path.`, { cause });
  }
}

/** A raster on the disk or behind a web address. */
export const rasterSource = (name: string): ByteSource =>
  /^https?:\/\//.test(name) ? urlSource(name) : fileSource(name);

/** What the book's own list says of a raster, for where the file is silent. */
export function rasterOptions(book: Book, name: string): ElevationOptions {
  const known: SourceRecord | undefined = live(book, 'sources').find(
    ({ kind, address }) => kind === 'elevation' && address === name,
  );
  return {
    ...(known?.crs ? { crs: known.crs } : {}),
    ...(known?.verticalUnit ? { verticalUnit: known.verticalUnit } : {}),
    ...(known && known.terrainKind !== 'unknown' ? { kind: known.terrainKind } : {}),
    ...(known?.verticalRmseM ? { verticalRmseM: known.verticalRmseM } : {}),
    ...(known?.collectedOn ? { collectedOn: known.collectedOn } : {}),
  };
}

/** The first of `photos` for each site, out of the book file, as a sheet shows it. */
export async function sheetPhotos(
  file: BookFile | null,
  siteIds: readonly string[],
  photos: readonly PhotoRecord[],
): Promise<ReadonlyMap<string, SheetPhoto[]>> {
  const found = new Map<string, SheetPhoto[]>();
  const wanted = siteIds.flatMap((id) => photos.find(({ siteId }) => siteId === id) ?? []);
  if (!file || wanted.length === 0) return found;
  await file.eachPhoto(async ({ hash, type, bytes }) => {
    for (const { siteId, caption, widthPx, heightPx } of wanted.filter((photo) => photo.hash === hash)) {
      const data = `data:${type};base64,${Buffer.from(bytes).toString('base64')}`;
      found.set(siteId, [{ data, caption, widthPx, heightPx }]);
    }
  });
  return found;
}
