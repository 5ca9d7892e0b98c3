import type { LonLat } from '../geo/index.ts';
import type { Side } from '../study/index.ts';

/** What the address bar says: the empty desk, a study, or the form for own files. */
export type Place =
  | { readonly screen: 'start' }
  | { readonly screen: 'study'; readonly at: LonLat; readonly side: Side | null }
  | { readonly screen: 'open' };

/** Reads `#/study/LON,LAT,side` or `#/open`; anything else is the start. */
export function readAddress(hash: string): Place {
  if (hash === '#/open') return { screen: 'open' };
  const match = /^#\/study\/(-?\d+(?:\.\d+)?),(-?\d+(?:\.\d+)?)(?:,(left|right))?$/.exec(hash);
  if (!match) return { screen: 'start' };
  const at = { lon: Number(match[1]), lat: Number(match[2]) };
  if (Math.abs(at.lon) > 180 || Math.abs(at.lat) > 90) return { screen: 'start' };
  return { screen: 'study', at, side: (match[3] as Side | undefined) ?? null };
}

/** Writes an address; positions to a centimetre. */
export function writeAddress(place: Place): string {
  if (place.screen === 'open') return '#/open';
  if (place.screen === 'start') return '#/';
  const { at, side } = place;
  return `#/study/${at.lon.toFixed(7)},${at.lat.toFixed(7)}${side ? `,${side}` : ''}`;
}
