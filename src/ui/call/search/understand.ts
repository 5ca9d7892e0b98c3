import type { PositionReading } from '../../../geo/index.ts';
import type { CallPack, CallRoad, CallSite } from '../../../io/offline/index.ts';
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
  const isMessage = words.length > MESSAGE_WORDS;
  const hits: Hit[] = [];
  const position = /\d/.test(text) ? readPosition(text) : null;
  if (position?.ok) hits.push({ kind: 'position', reading: position.value });
  // The digits of a position are no mile; a message may hold both.
  if (!position?.ok || isMessage) {
    const { places, refusals, roads } = readRoadMile(text, pack.roads);
    hits.push(...places.map((place): Hit => ({ kind: 'mile', place })));
    const named = isMessage ? sitesNamedIn(words, pack.sites) : places.length > 0 ? [] : index.find(text, MOST);
    const sites = named.length > 0 ? named : sitesOn(places, roads, pack.sites);
    hits.push(...sites.map((site): Hit => ({ kind: 'site', site })));
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

/** Sites of the roads that are named: those nearest along the road where a mile is told, else all. */
function sitesOn(places: readonly MileHit[], roads: readonly CallRoad[], sites: readonly CallSite[]): CallSite[] {
  const [place] = places;
  const named = new Set((place ? places.map(({ road }) => road) : roads).map(({ name }) => name));
  const own = sites.filter(({ road }) => named.has(road));
  return place ? own.sort((a, b) => away(a, place.stationM) - away(b, place.stationM)).slice(0, NEAREST) : own;
}

/** Sites that are told with a mile. */
const NEAREST = 3;

const away = (site: CallSite, stationM: number): number =>
  site.stationM === null ? Infinity : Math.abs(site.stationM - stationM);
