import * as mgrs from 'mgrs';
import type { LonLat } from '../types.ts';

// Bundlers see the library's named exports, Node its default export alone; asked by name, so that no bundler warns of it.
const { forward, inverse, toPoint }: typeof mgrs = Reflect.get(mgrs, 'default') ?? mgrs;

/** Digits of each number of a reference: 5 name a square of 1 m, 4 of 10 m. */
export type UsngDigits = 1 | 2 | 3 | 4 | 5;

/**
 * US National Grid reference of a position, "18S UJ 23486 06483": zone and band, square of 100 km, easting, northing. Digits
 * are cut off, never rounded, so that a reference names the square that the position lies in. Null beyond 84° north and
 * 80° south, where the grid ends. NAD 83 is taken for WGS 84. [source: fgdc-usng]
 */
export function formatUsng({ lon, lat }: LonLat, digits: UsngDigits = 5): string | null {
  if (!(lat >= -80 && lat <= 84)) return null;
  const [, zone, square, numbers] = /^(\d{1,2}[A-Z])([A-Z]{2})(\d+)$/.exec(forward([wrapped(lon), lat], digits))!;
  return `${zone} ${square} ${numbers.slice(0, digits)} ${numbers.slice(digits)}`;
}

const reference = /^\s*(\d{1,2})\s*([C-HJ-NP-X])\s*([A-HJ-NP-Z]{2})\s*(?:(\d{1,5})\s+(\d{1,5})|(\d{2,10}))\s*$/i;

/**
 * The middle of the square that a US National Grid reference names, and half its side in metres; null where the text is no
 * reference, or names a square that its zone and band do not have.
 */
export function parseUsng(text: string): { readonly position: LonLat; readonly withinM: number } | null {
  const match = reference.exec(text);
  if (!match) return null;
  const [, zone, band, square, east = '', north = '', joined = ''] = match;
  const numbers = joined || east + north;
  if (joined ? joined.length % 2 === 1 : east.length !== north.length) return null;
  const digits = numbers.length / 2;
  const name = `${Number(zone)}${band}${square}`.toUpperCase();
  try {
    const [west, south, eastEdge, northEdge] = inverse(name + numbers);
    const [lon, lat] = toPoint(name + centred(numbers.slice(0, digits)) + centred(numbers.slice(digits)));
    const position = { lon, lat };
    const corners = [west, eastEdge].flatMap((x) => [south, northEdge].map((y) => ({ lon: x, lat: y })));
    const found = [position, ...corners].some((at) => isIn(name, at));
    return found ? { position, withinM: 0.5 * 10 ** (5 - digits) } : null;
  } catch {
    return null;
  }
}

/** The metre in the middle of a coarser square, in five digits; in degrees the middle would be metres aside. */
const centred = (digits: string): string => (digits.length < 5 ? `${digits}5`.padEnd(5, '0') : digits);

/** True where a position lies in a zone, band and 100 km square, or within the rounding of the conversion beside them. */
function isIn(name: string, { lon, lat }: LonLat): boolean {
  return AROUND.some(([dLon, dLat]) => {
    const at = lat + dLat;
    return at >= -80 && at <= 84 && forward([wrapped(lon + dLon), at], 1).startsWith(name);
  });
}

/** About 3 m, in degrees. */
const BESIDE = 3e-5;
const AROUND = [-BESIDE, 0, BESIDE].flatMap((dLon) => [-BESIDE, 0, BESIDE].map((dLat) => [dLon, dLat] as const));

/** Longitude brought into [−180, 180), which is all that the library takes. */
const wrapped = (lon: number): number => ((((lon + 180) % 360) + 360) % 360) - 180;
