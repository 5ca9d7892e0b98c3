import type { CallRoad } from '../../../io/offline/index.ts';
import { type MilePlace, placesOfMile } from '../../../road/index.ts';
import { isLike, wordsOf } from './words.ts';

/** A place told by road and mile. */
export interface MileHit extends MilePlace {
  readonly road: CallRoad;
  readonly mile: number;
}

/** What a text says of roads and miles: the places, and sentences where a mile is not to be had. */
export interface MileReading {
  readonly places: readonly MileHit[];
  readonly refusals: readonly string[];
  /** Roads that the text names, whether or not it names a mile. */
  readonly roads: readonly CallRoad[];
}

const MARKER = /^(?:mm|mp|mile|miles|mi|milemarker|milepost|marker|post)$/;
const GLUED = /^(?:mm|mp|mi)(\d{1,4}(?:\.\d{1,3})?)$/;
const NUMBER = /^\d{1,4}(?:\.\d{1,3})?$/;
/** Words of a road's kind: they alone name no road. */
const KIND = new Set(['road', 'street', 'lane', 'drive', 'avenue', 'highway', 'route', 'boulevard', 'the', 'of']);

/** Reads "cinder grade 3.4", "MM 12.5 Lantern Creek Rd", or both inside a message. */
export function readRoadMile(text: string, roads: readonly CallRoad[]): MileReading {
  const words = wordsOf(text.replace(/(\d),(\d)/g, '$1.$2'));
  const named = roads.map((road) => ({ road, ...matchOf(words, road) })).filter(({ score }) => score > 0);
  const best = Math.max(0, ...named.map(({ score }) => score));
  const kept = named.filter(({ score }) => score === best);
  const { mile, marked } = mileIn(words, new Set(kept.flatMap(({ used }) => used)));
  // A mile alone is asked of every road that has posts.
  const asked = kept.length > 0 ? kept.map(({ road }) => road) : marked ? roads.filter(hasPosts) : [];
  const places: MileHit[] = [];
  const refusals: string[] = [];
  if (mile !== null) {
    for (const road of asked) {
      const route = {
        ...road,
        line: Float64Array.from(road.line),
        stationM: Float64Array.from(road.stationM),
        legs: [],
      };
      const found = placesOfMile(route, road.calibration, mile);
      if (found.ok) places.push(...found.value.map((place) => ({ ...place, road, mile })));
      else refusals.push(found.error.message);
    }
  }
  return { places, refusals: places.length > 0 ? [] : refusals, roads: kept.map(({ road }) => road) };
}

const hasPosts = ({ calibration }: CallRoad): boolean => calibration.stretches.length > 0;

/** How many of a road's telling words a text has, as a share that grows with their number; which words of the text they are. */
function matchOf(
  words: readonly string[],
  { name, ref }: CallRoad,
): { readonly score: number; readonly used: readonly number[] } {
  const byRef = ref === null ? null : runOf(words, wordsOf(ref));
  if (byRef) return { score: 10, used: byRef };
  const own = wordsOf(name ?? '').filter((word) => !KIND.has(word));
  const used = own.flatMap((word) => {
    const at = words.findIndex((typed) => isLike(typed, word));
    return at < 0 ? [] : [at];
  });
  return { score: own.length > 0 && used.length > 0 ? used.length / own.length + used.length / 100 : 0, used };
}

/** Positions of words that stand in a row in a text, or null. */
function runOf(words: readonly string[], row: readonly string[]): number[] | null {
  if (row.length === 0) return null;
  for (let i = 0; i + row.length <= words.length; i++) {
    if (row.every((word, k) => words[i + k] === word)) return row.map((_, k) => i + k);
  }
  return null;
}

/** The mile in a text: the number beside a marker word, else the last number that is not part of a road's name. */
function mileIn(words: readonly string[], taken: ReadonlySet<number>): { mile: number | null; marked: boolean } {
  for (let i = 0; i < words.length; i++) {
    const glued = GLUED.exec(words[i]!);
    if (glued) return { mile: Number(glued[1]), marked: true };
    if (!MARKER.test(words[i]!)) continue;
    let k = i + 1;
    while (k < words.length && MARKER.test(words[k]!)) k++;
    if (k < words.length && NUMBER.test(words[k]!)) return { mile: Number(words[k]), marked: true };
    if (i > 0 && NUMBER.test(words[i - 1]!) && !taken.has(i - 1)) return { mile: Number(words[i - 1]), marked: true };
  }
  if (words.length > SHORT_TEXT) return { mile: null, marked: false };
  const numbers = words.flatMap((word, i) => (NUMBER.test(word) && !taken.has(i) ? [Number(word)] : []));
  return { mile: numbers.at(-1) ?? null, marked: false };
}

/** Above this many words a text is a message, and a bare number in it is no mile: it may be a unit or an age. */
const SHORT_TEXT = 6;
