import { type Book, defaultAngleRule, districtNameOf, live, settingsOf } from '../book/index.ts';
import type { ByteSource } from '../io/index.ts';
import type { FolderInMaking } from '../io/node/index.ts';
import {
  type CallPack,
  type CallSite,
  keptWeathers,
  memoryStore,
  packJson,
  readKeptStudy,
  type Weather,
} from '../io/offline/index.ts';
import { fileStems, type NotWorkedOut, publishedPaths } from '../io/publish/index.ts';
import type { Study } from '../study/index.ts';
import { UserError } from '../units/index.ts';
import { type CallFunctions, callFunctions } from '../workers/call/index.ts';
import type { Opener, Origin } from '../workers/index.ts';
import { rasterOptions, rasterSource } from './district-files.ts';

/** Ground is published this far around each site, metres each way: as far as a study ever reads, and some more. */
export const GROUND_HALF_M = 700;

/** What was worked out of a book's sites. */
export interface WorkedSites {
  readonly pack: CallPack;
  readonly stems: Readonly<Record<string, string>>;
  readonly notWorkedOut: readonly NotWorkedOut[];
  /** Studies of the sites in dry weather, by id. */
  readonly studies: ReadonlyMap<string, Study>;
}

interface ToWorkOut {
  /** The book as it is published. */
  readonly book: Book;
  /** The book that knows what rasters do not say of themselves. */
  readonly facts: Book;
  readonly elevation: readonly string[];
  /** Roads as GeoJSON text. */
  readonly roads: string;
}

/** Works every site out in each weather, as a device would that keeps the district, and writes the studies into the folder. */
export async function workOutSites(
  folder: FolderInMaking,
  asked: ToWorkOut,
  say: (line: string) => void,
): Promise<WorkedSites> {
  const opener = openerOf(asked.roads);
  try {
    return await workedOut(folder, asked, opener, say);
  } finally {
    await opener.close();
  }
}

async function workedOut(
  folder: FolderInMaking,
  { book, facts, elevation }: ToWorkOut,
  opener: PublishOpener,
  say: (line: string) => void,
): Promise<WorkedSites> {
  const store = memoryStore();
  const functions = callFunctions(opener, store, () => {});
  const signal = new AbortController().signal;
  const settings = settingsOf(book);
  const invented = settings?.invented ?? false;
  const name = districtNameOf(book);
  const each = elevation.map((raster) => rasterOptions(facts, raster));
  const files = { elevation, each, options: {}, roads: 'roads.geojson', marks: null };
  const source = { name, invented, files, book, units: settings?.units ?? 'us', rule: defaultAngleRule };
  const { pack, complaints } = await functions.open({ source, keeping: false }, signal);
  for (const complaint of complaints) say(complaint);
  const stems = fileStems(live(book, 'sites').map(({ id }) => id));
  const sites: CallSite[] = [];
  const notWorkedOut: NotWorkedOut[] = [];
  const studies = new Map<string, Study>();
  for (const [i, site] of pack.sites.entries()) {
    say(`${i + 1} of ${pack.sites.length}: ${site.name}`);
    const made = await workOut(functions, site, signal);
    // A raster that cannot be read is no fault of a site's.
    if (opener.broken()) throw opener.broken();
    if (made.why !== null) notWorkedOut.push({ id: site.id, why: made.why });
    sites.push(made.site);
    if (made.why !== null) continue;
    for (const weather of keptWeathers) {
      const { study } = (await readKeptStudy(store, site.id, weather))!;
      if (weather === 'dry') studies.set(site.id, study);
      const packed = new Uint8Array(await packJson(study));
      await folder.write(publishedPaths.study(stems[site.id]!, weather), packed);
    }
    await forget(store, site.id);
  }
  const madeAtMs = Date.now();
  const made: CallPack = {
    ...pack,
    ...(notWorkedOut.length > 0 && { withoutStudy: notWorkedOut.map(({ id }) => id) }),
    sites,
    madeAtMs,
    publishedAtMs: madeAtMs,
    from: 'published',
    madeFrom: `published ${madeAtMs}`,
  };
  return { pack: made, stems, notWorkedOut, studies };
}

/** A site in each weather; where one cannot be worked out, none is published, and the reason is told. */
async function workOut(
  functions: CallFunctions,
  site: CallSite,
  signal: AbortSignal,
): Promise<{ site: CallSite; why: string | null }> {
  let listed = site;
  try {
    for (const weather of keptWeathers) {
      const told = await functions.keepSite({ id: site.id, weather }, signal);
      if (weather === 'dry') listed = told;
    }
    return { site: listed, why: null };
  } catch (error) {
    if (error instanceof UserError) return { site, why: error.message };
    throw error;
  }
}

/** A study is written once and not needed again. */
const forget = (store: ReturnType<typeof memoryStore>, id: string): Promise<unknown> =>
  Promise.all(keptWeathers.map((weather: Weather) => store.remove(`call/study/${id}/${weather}`)));

interface PublishOpener extends Opener {
  /** What a raster's bytes could not be read for; null where all could. */
  broken(): unknown;
  close(): Promise<unknown>;
}

/** Rasters by their last name, since a study carries it, without what an address may carry behind it; the roads are at hand. */
function openerOf(roads: string): PublishOpener {
  const opened: ByteSource[] = [];
  let broken: unknown = null;
  return {
    bytes(origin: Origin) {
      const source = rasterSource(String(origin));
      opened.push(source);
      const bare = source.name.replace(/^(https?:[^?#]*).*$/s, '$1');
      return {
        ...source,
        name: bare.split(/[\\/]/).at(-1)!,
        async read(...asked) {
          try {
            return await source.read(...asked);
          } catch (error) {
            broken ??= error;
            throw error;
          }
        },
      };
    },
    whole: async () => new TextEncoder().encode(roads),
    pool: null,
    broken: () => broken,
    close: () => Promise.all(opened.map((one) => one.close?.())),
  };
}
