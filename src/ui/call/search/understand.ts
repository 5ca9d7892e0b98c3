import type { LonLat, PositionReading } from '../../../geo/index.ts';
import type { CallPack, CallSite } from '../../../io/offline/index.ts';
import type { Result } from '../../../units/index.ts';
import { type MileHit, readRoadMile } from './road-mile.ts';
import type { SiteIndex } from './site-index.ts';
import { wordsOf } from './words.ts';

/** One thing that a text may mean. */
export type Hit =
  | { readonly kind: 'position'; readonly reading: PositionReading }
  | { readonly kind: 'mile'; readonly place: MileHit }
  | { readonly kind: 'site'; readonly site: CallSite }
  /** Something that somebody meant and cannot have: a sentence. */
  | { readonly kind: 'said'; readonly sentence: string };

export interface Reader {
  readonly pack: Pick<CallPack, 'sites' | 'roads'>;
  readonly index: SiteIndex;
  /** Reads positions, with the district's bounds in mind. */
  readonly readPosition: (text: string) => Result<PositionReading>;
}

/** Results that are shown at most: more than a thumb scrolls to is noise. */
const MOST = 8;
/** Above this many words a text is a pasted message: site names count only whole. */
const MESSAGE_WORDS = 8;

/** Everything that a typed or pasted text may mean, likeliest first: a position, a road with its mile, sites by name. */
export function understand(text: string, { pack, index, readPosition }: Reader): Hit[] {
  const words = wordsOf(text);
  if (words.length === 0) return [];
  const hits: Hit[] = [];
  const position = /\d/.test(text) ? readPosition(text) : null;
  if (position?.ok) hits.push({ kind: 'position', reading: position.value });
  const { places, refusals, roads } = readRoadMile(text, pack.roads);
  // Digits of a position are no mile.
  if (!position?.ok || words.length > MESSAGE_WORDS)
    hits.push(...places.map((place): Hit => ({ kind: 'mile', place })));
  const sites = words.length > MESSAGE_WORDS ? sitesNamedIn(words, pack.sites) : index.find(text, MOST);
  if (!position?.ok || words.length > MESSAGE_WORDS) {
    const onRoad = new Set(places.map(({ road }) => road.name));
    // With a mile told, sites of that road follow by their distance along it.
    const shown =
      places.length > 0
        ? nearMile(
            places[0]!,
            pack.sites.filter(({ road }) => onRoad.has(road)),
          )
        : sites;
    hits.push(...shown.map((site): Hit => ({ kind: 'site', site })));
    if (shown.length === 0 && roads.length > 0) {
      const named = new Set(roads.map(({ name }) => name));
      const own = pack.sites.filter(({ road }) => named.has(road));
      hits.push(...own.map((site): Hit => ({ kind: 'site', site })));
    }
    hits.push(...refusals.map((sentence): Hit => ({ kind: 'said', sentence })));
  }
  if (hits.length === 0 && position && !position.ok && position.error.code === 'position-fault') {
    hits.push({ kind: 'said', sentence: position.error.message });
  }
  return hits.slice(0, MOST);
}

/** Sites whose whole name stands in a message. */
function sitesNamedIn(words: readonly string[], sites: readonly CallSite[]): CallSite[] {
  const text = ` ${words.join(' ')} `;
  return sites.filter(({ name }) => text.includes(` ${wordsOf(name).join(' ')} `));
}

const nearMile = ({ stationM }: { stationM: number }, sites: readonly CallSite[]): CallSite[] =>
  [...sites].sort((a, b) => away(a, stationM) - away(b, stationM)).slice(0, 3);

const away = (site: CallSite, stationM: number): number =>
  site.stationM === null ? Infinity : Math.abs(site.stationM - stationM);

/** Where a hit lies; null for a sentence. */
export function placeOf(hit: Hit): LonLat | null {
  if (hit.kind === 'site') return hit.site;
  if (hit.kind === 'mile') return hit.place.position;
  return hit.kind === 'position' ? hit.reading.position : null;
}
