import { type Book, defaultAngleRule, live, settingsOf } from '../../book/index.ts';
import { appFolder } from '../../io/offline/index.ts';
import { PUBLISHED_META } from '../../io/publish/index.ts';
import type { CallSource } from '../../workers/call/index.ts';
import { demoFiles } from '../demo.ts';
import type { PublishedHere } from './published.ts';

/** Names this build of the program: another may compute otherwise. */
declare const __PROGRAM__: string;

/** Name of the browser's book that the desk keeps for the demo district. */
const BOOK = 'demo';

/** The district of this device. `behind`: its book holds edits that the plain copy read here does not have yet. */
export interface DistrictHere {
  readonly source: CallSource;
  readonly behind: boolean;
  /** Where the page lies in a published folder. */
  readonly published: PublishedHere | null;
}

/** The district of the published folder that the page lies in, else that of this device, whose files may be kept. */
export async function districtHere(): Promise<DistrictHere> {
  const list = document.querySelector<HTMLMetaElement>(`meta[name="${PUBLISHED_META}"]`)?.content;
  if (list !== undefined) {
    const { publishedHere } = await import('./published.ts');
    return { ...(await publishedHere(new URL(list, location.href))), behind: false };
  }
  const read = await readBook();
  const book = read && live(read.book, 'sites').length > 0 ? read.book : null;
  const settings = book && settingsOf(book);
  const source: CallSource = {
    name: settings?.district || 'Tamarrow Fire District',
    invented: true,
    files: demoFiles(),
    posts: new URL('demo/calibration.json', appFolder()).href,
    book,
    units: settings?.units ?? 'us',
    rule: defaultAngleRule,
  };
  return { source, behind: read?.behind ?? false, published: null };
}

/** What names the district's present state, so that another state is kept anew; null without a network. */
export async function districtState({ source, published }: DistrictHere): Promise<string | null> {
  if (published) return published.online ? published.publication.pack.madeFrom : null;
  try {
    const answer = await fetch(new URL('demo/recipe.sha256', appFolder()), { cache: 'no-cache' });
    if (!answer.ok) return null;
    const book = source.book ? JSON.stringify(source.book.madeFrom) : '';
    return `${__PROGRAM__} ${(await answer.text()).trim()} ${book}`;
  } catch {
    return null;
  }
}

/** The plain copy of the book, without its merge; null where the desk has not kept any, or the browser keeps nothing. */
async function readBook(): Promise<{ readonly book: Book; readonly behind: boolean } | null> {
  try {
    const { readerSnapshot } = await import('../../io/web/store/index.ts');
    return await readerSnapshot(BOOK);
  } catch {
    return null;
  }
}
