import { type CallPack, type KeptStore, readKeptStudy } from '../../io/offline/index.ts';
import { fairConditions } from '../../rigging/index.ts';
import type { Study } from '../../study/index.ts';
import { UserError } from '../../units/index.ts';
import type { DistrictHere } from './source.ts';
import type { Circumstances, Place } from './state.ts';
import type { CallWorker } from './worker.ts';

/** Where studies come from: what is kept, what was published, and what computes. */
export interface StudySources {
  readonly disk: KeptStore;
  readonly worker: CallWorker;
  /** The pack as it is by then: it may come while a study is sought. */
  pack(): CallPack | null;
  district(): Promise<DistrictHere>;
}

/**
 * The study of a site or a roadside under the circumstances: a kept one where it is the same, else a published one, else worked out.
 * `atMs` says when it was kept; null where it was just worked out. Rejects with a `UserError` where there is no such site.
 */
export async function studyOf(
  place: Place,
  circumstances: Circumstances,
  { disk, worker, pack, district }: StudySources,
): Promise<{ study: Study; atMs: number | null }> {
  const { weather, night, wind } = circumstances;
  if (place.kind === 'site' && !night && !wind) {
    const kept = await readKeptStudy(disk, place.id, weather).catch(() => null);
    if (kept) return { ...kept, atMs: pack()?.publishedAtMs ?? kept.atMs };
    const { published } = await district();
    if (published && !published.publication.pack.withoutStudy?.includes(place.id)) {
      const { publishedAtMs = null } = published.publication.pack;
      return { study: await published.study(place.id, weather), atMs: publishedAtMs };
    }
  }
  const conditions = { ...fairConditions, wet: weather === 'wet', ice: weather === 'ice', night, wind };
  if (place.kind === 'site') {
    const site = pack()?.sites.find(({ id }) => id === place.id);
    if (!site) throw new UserError('no-site', `No site "${place.id}" is in the book on this device; search for it.`);
    const side = { azimuthDeg: site.sideAzimuthDeg };
    const at = { lon: site.lon, lat: site.lat };
    return {
      study: await worker.ask('study', { at, side, siteId: site.id, conditions }, (await district()).source),
      atMs: null,
    };
  }
  if (place.kind !== 'spot') throw new Error(`No study is made of a place of the kind "${place.kind}".`);
  const side = { azimuthDeg: place.sideAzimuthDeg };
  return {
    study: await worker.ask('study', { at: place.at, side, siteId: null, conditions }, (await district()).source),
    atMs: null,
  };
}
