import { type CallSite, cacheStore, type Weather, writeKeptStudy } from '../../io/offline/index.ts';
import { UserError } from '../../units/index.ts';
import type { CallSource } from '../../workers/call/index.ts';
import type { PublishedHere } from './published.ts';
import type { CallWorker } from './worker.ts';

/** Keeps a site's published study as it is, and with the first of them the ground around the site; the site as the list has it. */
export async function keepPublished(
  worker: CallWorker,
  source: CallSource,
  published: PublishedHere,
  { id, weather }: { readonly id: string; readonly weather: Weather },
): Promise<CallSite> {
  const { pack } = published.publication;
  const site = pack.sites.find((one) => one.id === id);
  if (!site) throw new UserError('no-site', `No site "${id}" is in the published book; search for it.`);
  if (pack.withoutStudy?.includes(id)) return site;
  await writeKeptStudy(cacheStore(), id, weather, await published.study(id, weather));
  if (weather === 'dry') await worker.ask('keepGround', { id }, source);
  return site;
}
