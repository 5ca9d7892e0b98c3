import { defaultAngleRule, restoreBook } from '../../book/index.ts';
import { imageTypeOf } from '../../io/index.ts';
import { appFolder, cacheStore, keepingFetch, type Weather } from '../../io/offline/index.ts';
import { type Publication, publishedPaths, readPublication, readPublishedStudy } from '../../io/publish/index.ts';
import type { Study } from '../../study/index.ts';
import { UserError } from '../../units/index.ts';
import type { CallSource } from '../../workers/call/index.ts';

/** A published folder: its studies are made, and lie in it. */
export interface PublishedHere {
  readonly publication: Publication;
  /** Its list came from its host just now, not from what is kept. */
  readonly online: boolean;
  /** A site's study, kept or from the host; rejects with a `UserError` where neither has it. */
  study(id: string, weather: Weather): Promise<Study>;
  /** Keeps its list, its book and its photos, for the time without a network. */
  keepLists(): Promise<void>;
}

/** After this long without an answer what is kept is used, milliseconds, as for the district's other files. */
const PATIENCE_MS = 4000;

/** Opens the published folder that the page lies in; `list` is the address of its list. */
export async function publishedHere(list: URL): Promise<{ source: CallSource; published: PublishedHere }> {
  const disk = cacheStore();
  const ask = keepingFetch(disk, () => 'kept first');
  const keep = keepingFetch(disk, () => 'keep');
  const at = (path: string): string => new URL(path, appFolder()).href;
  const fresh = await fetch(list, { cache: 'no-cache', signal: AbortSignal.timeout(PATIENCE_MS) }).catch(() => null);
  const listed = fresh?.ok ? await fresh.text().catch(() => null) : null;
  const online = listed !== null;
  const publication = readPublication(listed ?? (await textOf(ask, list.href)), 'This folder');
  const { pack, elevation, groundHalfM, stems } = publication;
  // The book of the list at hand: not the kept one of a publication before.
  const bookText = await textOf(online ? keepingFetch(disk, () => 'network first') : ask, at(publishedPaths.book));
  const book = restoreBook(JSON.parse(bookText), 'the published book');
  const source: CallSource = {
    name: pack.district,
    invented: pack.invented,
    files: {
      elevation: elevation.map(({ file }) => at(file)),
      each: elevation.map(({ options }) => options),
      options: {},
      roads: at(publishedPaths.roads),
      marks: null,
    },
    book,
    units: pack.units,
    rule: defaultAngleRule,
    groundHalfM,
  };
  return {
    source,
    published: {
      publication,
      online,
      async study(id, weather) {
        const stem = stems[id];
        if (stem === undefined)
          throw new UserError('no-site', `No site "${id}" is in the published book; search for it.`);
        const url = at(publishedPaths.study(stem, weather));
        return readPublishedStudy(await bytesOf(fetch, url));
      },
      async keepLists() {
        await keep(list.href);
        await keep(at(publishedPaths.book));
        for (const { hash } of book.tables.photos) await keep(at(publishedPaths.photo(hash)));
      },
    },
  };
}

/** A published photo by its hash, kept or from the host; rejects with a `UserError` where neither has it. */
export async function publishedPhoto(hash: string): Promise<Blob> {
  const ask = keepingFetch(cacheStore(), () => 'kept first');
  const bytes = await bytesOf(ask, new URL(publishedPaths.photo(hash), appFolder()).href);
  return new Blob([bytes], { type: imageTypeOf(new Uint8Array(bytes)) ?? '' });
}

const textOf = async (ask: typeof fetch, url: string): Promise<string> =>
  new TextDecoder().decode(await bytesOf(ask, url));

async function bytesOf(ask: typeof fetch, url: string): Promise<ArrayBuffer> {
  let answer: Response;
  let bytes: ArrayBuffer;
  try {
    answer = await ask(url, { cache: 'no-cache' });
    bytes = await answer.arrayBuffer();
  } catch (cause) {
    throw new UserError(
      'no-answer',
      'The published folder gives no whole answer; connect to a network and try again.',
      {
        cause,
      },
    );
  }
  if (answer.ok) return bytes;
  const status = `${answer.status} ${answer.statusText}`.trim();
  throw new UserError('http-status', `The published folder answered ${status} for ${url}; publish the book again.`);
}
