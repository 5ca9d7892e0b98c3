import { ownName } from './app-folder.ts';
import { type CallPack, dropPack, keptStudyIds, readPack } from './call-pack.ts';
import type { KeptStore } from './kept-store.ts';

/** What is kept on this device for use without a network, and what the browser says of it. */
export interface KeptState {
  readonly pack: CallPack | null;
  /** Sites of the pack whose study is there. */
  readonly studies: number;
  /** Pages of elevation, and whether every raster's list of them is there. */
  readonly elevationPages: number;
  /** What this browser once kept and no longer has: it cleared its storage. Null where nothing is missing. */
  readonly lost: Receipt | null;
}

/** What was kept, noted apart from it, so that a loss can be told. */
export interface Receipt {
  readonly district: string;
  readonly sites: number;
  readonly atMs: number;
}

const RECEIPT = 'brinkbook/kept';

/** Reads what is kept and compares it with what once was. `notes` is the page's `localStorage`. */
export async function keptState(store: KeptStore, notes: Pick<Storage, 'getItem'>): Promise<KeptState> {
  const pack = await readPack(store).catch(() => null);
  const ids = await keptStudyIds(store).catch(() => new Set<string>());
  const pages = await store.keys('pages/').catch(() => []);
  const studies = pack ? pack.sites.filter(({ id }) => ids.has(id)).length : 0;
  const elevationPages = pages.filter((key) => !key.endsWith('/index')).length;
  const receipt = readReceipt(notes);
  const whole = pack !== null && allStudies(pack, studies) && (pack.groundHere === true || elevationPages > 0);
  return { pack, studies, elevationPages, lost: receipt && !whole ? receipt : null };
}

/** Whether so many kept studies are all that there are of a pack's sites. */
export const allStudies = ({ sites, withoutStudy }: CallPack, studies: number): boolean =>
  studies === sites.length - (withoutStudy?.length ?? 0);

/** Notes that a pack was kept whole. */
export const noteKept = (notes: Pick<Storage, 'setItem'>, { district, sites, madeAtMs }: CallPack): void =>
  notes.setItem(ownName(RECEIPT), JSON.stringify({ district, sites: sites.length, atMs: madeAtMs } satisfies Receipt));

/** Forgets what is kept of a district, and that it was kept: another takes its place. */
export async function forgetKept(store: KeptStore, notes: Pick<Storage, 'removeItem'>): Promise<void> {
  notes.removeItem(ownName(RECEIPT));
  await dropPack(store);
}

function readReceipt(notes: Pick<Storage, 'getItem'>): Receipt | null {
  try {
    const found = JSON.parse(notes.getItem(ownName(RECEIPT)) ?? 'null') as Receipt | null;
    return found && typeof found.sites === 'number' ? found : null;
  } catch {
    return null;
  }
}
