import type { LonLat } from '../../geo/index.ts';
import { ascii, viewOf } from './bytes.ts';
import type { ImageType } from './image-type.ts';
import { partsOf } from './parts.ts';

/** What a photo's file says of itself that a book can use. */
export interface PhotoFacts {
  /** Where the camera says that it was, WGS 84 degrees. */
  readonly at: LonLat | null;
  /** Day by the camera's clock, YYYY-MM-DD. */
  readonly takenOn: string | null;
  /** 1 to 8 as Exif counts: 1 upright, from 5 on width and height are exchanged. */
  readonly orientation: number;
}

/** Facts in an image's Exif [source: exif232]; null and 1 where there are none or they are damaged. Never throws. */
export function readExif(bytes: Uint8Array, type: ImageType): PhotoFacts {
  const block = exifBlock(bytes, type);
  const nothing = { at: null, takenOn: null, orientation: 1 };
  const little = block && ascii(block, 0, 2) === 'II';
  if (!block || block.length < 8 || (!little && ascii(block, 0, 2) !== 'MM')) return nothing;
  const tiff: Tiff = { view: viewOf(block), bytes: block, little: little === true };
  const main = readTags(tiff, tiff.view.getUint32(4, tiff.little));
  const orientation = number(tiff, main.get(0x0112)) ?? 1;
  const own = readTags(tiff, number(tiff, main.get(0x8769)));
  const gps = readTags(tiff, number(tiff, main.get(0x8825)));
  const taken = /^(\d{4}):(\d\d):(\d\d)/.exec(text(tiff, own.get(0x9003)) ?? '');
  return {
    at: placeOf(tiff, gps),
    takenOn:
      taken && isDay(Number(taken[1]), Number(taken[2]), Number(taken[3]))
        ? `${taken[1]}-${taken[2]}-${taken[3]}`
        : null,
    orientation: Number.isInteger(orientation) && orientation >= 1 && orientation <= 8 ? orientation : 1,
  };
}

function exifBlock(bytes: Uint8Array, type: ImageType): Uint8Array | null {
  const parts = partsOf(bytes, type) ?? [];
  if (type === 'image/jpeg') {
    const found = parts.find(({ name, body }) => name === 'e1' && ascii(body, 0, 6) === 'Exif\0\0');
    return found?.body.subarray(6) ?? null;
  }
  const body = parts.find(({ name }) => name === 'eXIf' || name === 'EXIF')?.body ?? null;
  return body && ascii(body, 0, 6) === 'Exif\0\0' ? body.subarray(6) : body;
}

interface Tiff {
  readonly view: DataView;
  readonly bytes: Uint8Array;
  readonly little: boolean;
}

interface Tag {
  readonly kind: number;
  readonly count: number;
  /** Where its values stand. */
  readonly at: number;
}

/** The most entries of one directory that are looked at; cameras write under 60. */
const MOST_TAGS = 500;
const sizes: Readonly<Record<number, number>> = { 2: 1, 3: 2, 4: 4, 5: 8 };

/** Entries of one directory: tag, kind, count, value or its place [source: tiff6]. */
function readTags({ view, little }: Tiff, start: number | null): Map<number, Tag> {
  const tags = new Map<number, Tag>();
  if (start === null || start < 8 || start + 2 > view.byteLength) return tags;
  const count = Math.min(view.getUint16(start, little), MOST_TAGS);
  for (let i = 0; i < count; i++) {
    const entry = start + 2 + 12 * i;
    if (entry + 12 > view.byteLength) break;
    const kind = view.getUint16(entry + 2, little);
    const many = view.getUint32(entry + 4, little);
    const size = (sizes[kind] ?? 0) * many;
    const at = size > 4 ? view.getUint32(entry + 8, little) : entry + 8;
    if (size > 0 && size < 1e6 && at + size <= view.byteLength)
      tags.set(view.getUint16(entry, little), { kind, count: many, at });
  }
  return tags;
}

function number({ view, little }: Tiff, tag: Tag | undefined): number | null {
  if (tag?.kind === 3) return view.getUint16(tag.at, little);
  return tag?.kind === 4 ? view.getUint32(tag.at, little) : null;
}

const text = ({ bytes }: Tiff, tag: Tag | undefined): string | null =>
  tag?.kind === 2 ? ascii(bytes, tag.at, Math.min(tag.count, 64)) : null;

/** Latitude (2) and longitude (4) with their letters (1, 3); a datum (0x12) other than WGS 84 makes them unusable. */
function placeOf(tiff: Tiff, gps: ReadonlyMap<number, Tag>): LonLat | null {
  const lat = degrees(tiff, gps.get(2), text(tiff, gps.get(1)), 'N', 'S');
  const lon = degrees(tiff, gps.get(4), text(tiff, gps.get(3)), 'E', 'W');
  const datum =
    text(tiff, gps.get(0x12))
      ?.replace(/[^A-Z0-9]/gi, '')
      .toUpperCase() ?? '';
  const isKnown = ['', 'WGS84', 'NAD83', 'UNKNOWN'].includes(datum);
  if (lat === null || lon === null || !isKnown || Math.abs(lat) > 90 || Math.abs(lon) > 180) return null;
  // A camera without a fix writes zeros.
  return lat === 0 && lon === 0 ? null : { lon, lat };
}

/** Degrees, minutes and seconds as three fractions. */
function degrees(
  { view, little }: Tiff,
  tag: Tag | undefined,
  letter: string | null,
  positive: string,
  negative: string,
): number | null {
  const side = letter?.[0]?.toUpperCase();
  if (tag?.kind !== 5 || tag.count !== 3 || (side !== positive && side !== negative)) return null;
  let value = 0;
  for (let i = 0; i < 3; i++) {
    const above = view.getUint32(tag.at + 8 * i, little);
    const below = view.getUint32(tag.at + 8 * i + 4, little);
    if (below === 0 && above !== 0) return null;
    value += below === 0 ? 0 : above / below / 60 ** i;
  }
  return side === negative ? -value : value;
}

function isDay(year: number, month: number, day: number): boolean {
  const date = new Date(Date.UTC(year, month - 1, day));
  return year >= 1980 && date.getUTCMonth() === month - 1 && date.getUTCDate() === day;
}
