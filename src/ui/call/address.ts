import type { LonLat } from '../../geo/index.ts';

/** What the address says: a site, a position on the call with the radius of its circle, or nothing yet. */
export type CallAddress =
  | { readonly kind: 'start' }
  /** A site, with its position where the address says that too: for a device whose book has no such site. */
  | { readonly kind: 'site'; readonly id: string; readonly at: LonLat | null }
  | { readonly kind: 'at'; readonly at: LonLat; readonly errorM: number | null }
  /** A position as somebody wrote it that is no plain pair of degrees. */
  | { readonly kind: 'unread'; readonly text: string };

/**
 * Reads `#site=ID`, `#site=ID&at=LAT,LON`, `#at=LAT,LON` and `#at=LAT,LON,RADIUS` (degrees, latitude first, metres), as a dispatch system sends them. Other
 * text after `at=` is handed on to be read as a position in any usual form. Codes printed before had a site's position in the query,
 * `?at=LAT,LON#site=ID`: that is still read.
 */
export function readCallAddress(hash: string, query = ''): CallAddress {
  const site = /^#site=([\w.-]{1,64})(?:&at=(.*))?$/.exec(hash);
  if (site) {
    const place = readAt(site[2] ?? new URLSearchParams(query).get('at') ?? '');
    return { kind: 'site', id: site[1]!, at: place.kind === 'at' ? place.at : null };
  }
  const at = /^#at=(.+)$/.exec(hash);
  return at ? readAt(at[1]!) : { kind: 'start' };
}

/** Writes an address; positions to a centimetre. */
export function writeCallAddress(address: CallAddress): string {
  if (address.kind === 'site') {
    const { id, at } = address;
    return at ? `#site=${id}&at=${at.lat.toFixed(7)},${at.lon.toFixed(7)}` : `#site=${id}`;
  }
  if (address.kind === 'unread') return `#at=${encodeURIComponent(address.text)}`;
  if (address.kind === 'start') return '#';
  const { at, errorM } = address;
  return `#at=${at.lat.toFixed(7)},${at.lon.toFixed(7)}${errorM === null ? '' : `,${Math.round(errorM)}`}`;
}

function readAt(written: string): CallAddress {
  const text = decoded(written);
  const pair = /^\s*(-?\d{1,2}(?:\.\d+)?)\s*,\s*(-?\d{1,3}(?:\.\d+)?)(?:\s*,\s*(\d{1,5}(?:\.\d+)?))?\s*$/.exec(text);
  if (!pair) return { kind: 'unread', text };
  const [lat, lon] = [Number(pair[1]), Number(pair[2])];
  if (Math.abs(lat) > 90 || Math.abs(lon) > 180) return { kind: 'unread', text };
  return { kind: 'at', at: { lon, lat }, errorM: pair[3] === undefined ? null : Number(pair[3]) };
}

function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}
