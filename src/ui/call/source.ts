import { type Book, defaultAngleRule, districtNameOf, FILES, isOfDemo, live, settingsOf } from '../../book/index.ts';
import { DEMO_DISTRICT } from '../../io/offline/index.ts';
import { PUBLISHED_META, readPublication } from '../../io/publish/index.ts';
import type { CallSource } from '../../workers/call/index.ts';
import { demoFiles, demoStateFile } from '../demo.ts';
import { noteOwnDistrict, type OwnDistrict, ownDistrict } from '../own/own-district.ts';
import type { PublishedHere } from './published.ts';

/** Names this build of the program: another may compute otherwise. */
declare const __PROGRAM__: string;

/** How the page of a published folder says so. */
const MARK = `meta[name="${PUBLISHED_META}"]`;

/** The district of this device. `behind`: its book holds edits that the plain copy read here does not have yet. */
export interface DistrictHere {
  readonly source: CallSource;
  readonly behind: boolean;
  /** Names the district, as the kept pack of it does. */
  readonly from: string;
  /** Where the page lies in a published folder. */
  readonly published: PublishedHere | null;
  /** Keeps what the page itself reads of the district, for the time without a network; left out where that lies on the device. */
  readonly keepOwn?: () => Promise<void>;
}

/** The district of the published folder that the page lies in, else that of this device, whose files may be kept. */
export async function districtHere(): Promise<DistrictHere> {
  const list = document.querySelector<HTMLMetaElement>(MARK)?.content;
  if (list !== undefined) {
    const { publishedHere } = await import('./published.ts');
    const here = await publishedHere(new URL(list, location.href));
    return { ...here, behind: false, from: 'published', keepOwn: () => here.published.keepLists() };
  }
  const own = ownDistrict(localStorage);
  return (own && (await ownHere(own))) ?? demoHere();
}

/** Which district that is, known before anything of it is read. */
export const nameOfHere = (): string =>
  document.querySelector(MARK) ? 'published' : (ownDistrict(localStorage)?.keptId ?? DEMO_DISTRICT);

/** An own district; null where its files are no longer on this device. */
async function ownHere(own: OwnDistrict): Promise<DistrictHere | null> {
  const { keptFiles } = await import('../../io/web/index.ts');
  const files = await keptFiles(own.keptId).catch(() => null);
  if (!files) {
    noteOwnDistrict(localStorage, null);
    return null;
  }
  const read = await readBook(own.book);
  const settings = read && settingsOf(read.book);
  const source: CallSource = {
    name: (read && districtNameOf(read.book)) || own.name,
    invented: settings?.invented ?? false,
    files: { ...files, elevation: [...files.elevation, ...own.addresses] },
    book: read?.book ?? null,
    units: settings?.units ?? 'us',
    rule: defaultAngleRule,
  };
  return { source, behind: read?.behind ?? false, from: own.keptId, published: null };
}

/** The demo by the desk's book of it; by the file that the desk begins it with where nobody has begun it here. */
async function demoHere(): Promise<DistrictHere> {
  const read = await readBook(DEMO_DISTRICT);
  const isBegun = read !== null && (read.behind || read.book.madeFrom.some(({ actor }) => actor !== FILES));
  const begun = isBegun && live(read.book, 'sites').length > 0 ? read : null;
  const file = begun ? null : await import('./demo-book.ts');
  const book = begun?.book ?? (await file!.demoBook());
  const source: CallSource = {
    name: districtNameOf(book) || 'Demo district',
    invented: true,
    files: demoFiles(),
    book,
    units: settingsOf(book)?.units ?? 'us',
    rule: defaultAngleRule,
  };
  // A desk of an earlier version began it: the desk brings the rest of the file when it is opened.
  const behind = (begun?.behind ?? false) || !book.madeFrom.some(({ actor }) => isOfDemo(actor));
  return { source, behind, from: DEMO_DISTRICT, published: null, ...(file && { keepOwn: file.keepDemoBook }) };
}

/** What names the district's present state, so that another state is kept anew; null without a network. */
export async function districtState({ source, published, from }: DistrictHere): Promise<string | null> {
  if (published) return published.online ? published.publication.pack.madeFrom : null;
  const book = source.book ? JSON.stringify(source.book.madeFrom) : '';
  if (from !== DEMO_DISTRICT) return `${__PROGRAM__} ${from} ${book}`;
  try {
    const answer = await fetch(demoStateFile(), { cache: 'no-cache' });
    if (!answer.ok) return null;
    return `${__PROGRAM__} ${(await answer.text()).trim()} ${book}`;
  } catch {
    return null;
  }
}

/**
 * What names the state of the district as it is now where that can be told without opening it: the published list from its host,
 * else the book on this device. Null without a network, or where there is no telling.
 */
export async function stateNow(): Promise<string | null> {
  const list = document.querySelector<HTMLMetaElement>(MARK)?.content;
  if (list === undefined) return districtState(await districtHere());
  const answer = await fetch(new URL(list, location.href), { cache: 'no-cache' }).catch(() => null);
  if (!answer?.ok) return null;
  return readPublication(await answer.text(), 'This folder').pack.madeFrom;
}

/** The plain copy of the book, without its merge; null where the desk has not kept any, or the browser keeps nothing. */
async function readBook(name: string): Promise<{ readonly book: Book; readonly behind: boolean } | null> {
  try {
    const { readerSnapshot } = await import('../../io/web/store/index.ts');
    return await readerSnapshot(name);
  } catch {
    return null;
  }
}

/** A photo's bytes by their hash; null where they are not on this device. */
export async function photoHere(hash: string): Promise<Blob | null> {
  if (document.querySelector(MARK)) return (await import('./published.ts')).publishedPhoto(hash);
  const { readerPhoto } = await import('../../io/web/store/index.ts');
  return readerPhoto(ownDistrict(localStorage)?.book ?? DEMO_DISTRICT, hash);
}
