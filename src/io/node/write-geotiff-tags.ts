import type { Grid } from '../../terrain/index.ts';
import type { GeoTiffOptions } from './write-geotiff-options.ts';
import type { Tiles } from './write-geotiff-tiles.ts';

/** TIFF 6.0 field types that are written here. */
type FieldType = 'ascii' | 'short' | 'long' | 'double';

/** One directory entry: tag number, type, values (a text for 'ascii'). */
export interface Tag {
  readonly id: number;
  readonly type: FieldType;
  readonly values: readonly number[] | string;
}

const typeCode: Readonly<Record<FieldType, number>> = { ascii: 2, short: 3, long: 4, double: 12 };
const typeBytes: Readonly<Record<FieldType, number>> = { ascii: 1, short: 2, long: 4, double: 8 };

/** Baseline tags of one image (TIFF 6.0): size, tiles, 32-bit float samples, deflate with the floating-point predictor. */
export function imageTags(
  grid: Pick<Grid, 'width' | 'height'>,
  tileSize: number,
  overview: boolean,
  options: Pick<GeoTiffOptions, 'noData' | 'dateTime'>,
): Tag[] {
  return [
    { id: 254, type: 'long', values: [overview ? 1 : 0] },
    { id: 256, type: 'long', values: [grid.width] },
    { id: 257, type: 'long', values: [grid.height] },
    { id: 258, type: 'short', values: [32] },
    { id: 259, type: 'short', values: [8] },
    { id: 262, type: 'short', values: [1] },
    { id: 277, type: 'short', values: [1] },
    { id: 284, type: 'short', values: [1] },
    { id: 317, type: 'short', values: [3] },
    { id: 322, type: 'long', values: [tileSize] },
    { id: 323, type: 'long', values: [tileSize] },
    { id: 339, type: 'short', values: [3] },
    { id: 42113, type: 'ascii', values: String(options.noData) },
    ...(!overview && options.dateTime ? [{ id: 306, type: 'ascii', values: options.dateTime } as const] : []),
  ];
}

/** Georeference (OGC GeoTIFF 1.1): pixel-is-area, projected CRS and vertical unit by code; and the GDAL metadata items. */
export function geoTags(grid: Grid, options: GeoTiffOptions): Tag[] {
  const keys = [
    [1024, 1],
    [1025, 1],
    [3072, options.epsg],
    [3076, 9001],
    ...(options.verticalEpsg === undefined ? [] : [[4096, options.verticalEpsg]]),
    [4099, 9001],
  ];
  return [
    ...placeTags(grid),
    { id: 34735, type: 'short', values: [1, 1, 1, keys.length, ...keys.flatMap(([key, value]) => [key, 0, 1, value])] },
    ...itemTags(Object.entries(options.metadata ?? {})),
  ];
}

/** Cell size, and the north-west corner of the north-west cell (pixel-is-area). */
export const placeTags = (grid: Omit<Grid, 'width' | 'height' | 'data'>): Tag[] => [
  { id: 33550, type: 'double', values: [grid.stepX, grid.stepY, 0] },
  { id: 33922, type: 'double', values: [0, 0, 0, grid.x0 - grid.stepX / 2, grid.y0 + grid.stepY / 2, 0] },
];

/** The GDAL metadata items of the file, and the unit of its heights where one is given; no tag where there is nothing to say. */
export function itemTags(items: readonly (readonly [name: string, text: string])[], unitType?: string | null): Tag[] {
  // GDAL takes the escapes of a text off twice.
  const lines = items.map(([name, text]) => `<Item name="${escaped(name)}">${escaped(escaped(text))}</Item>`);
  if (unitType) lines.push(`<Item name="UNITTYPE" sample="0" role="unittype">${escaped(escaped(unitType))}</Item>`);
  return lines.length > 0
    ? [{ id: 42112, type: 'ascii', values: `<GDALMetadata>${lines.join('')}</GDALMetadata>` }]
    : [];
}

/** The tags with tile offsets and byte counts, in the ascending order that TIFF asks for. */
export function withTiles(tags: readonly Tag[], tiles: Tiles): Tag[] {
  const count = tiles.blocks.length;
  const offsets = tiles.offsets.length ? tiles.offsets : new Array<number>(count).fill(0);
  const all: Tag[] = [
    ...tags,
    { id: 324, type: 'long', values: offsets },
    { id: 325, type: 'long', values: tiles.blocks.map((block) => block.length) },
  ];
  return all.sort((a, b) => a.id - b.id);
}

const count = (tag: Tag): number => (typeof tag.values === 'string' ? byteLength(tag.values) + 1 : tag.values.length);
const byteLength = (text: string): number => new TextEncoder().encode(text).length;
const payload = (tag: Tag): number => count(tag) * typeBytes[tag.type];
const padded = (bytes: number): number => bytes + (bytes & 1);

/** Bytes that a directory and its values take. */
export const ifdSize = (tags: readonly Tag[]): number =>
  2 + tags.length * 12 + 4 + tags.reduce((sum, tag) => sum + (payload(tag) > 4 ? padded(payload(tag)) : 0), 0);

/** Writes one directory at `at`, its longer values behind it, and the offset of the next directory. */
export function ifd(tags: readonly Tag[], view: DataView, at: number, next: number): void {
  view.setUint16(at, tags.length, true);
  let entry = at + 2;
  let beyond = at + 2 + tags.length * 12 + 4;
  for (const tag of tags) {
    view.setUint16(entry, tag.id, true);
    view.setUint16(entry + 2, typeCode[tag.type], true);
    view.setUint32(entry + 4, count(tag), true);
    const inline = payload(tag) <= 4;
    if (!inline) view.setUint32(entry + 8, beyond, true);
    values(tag, view, inline ? entry + 8 : beyond);
    if (!inline) beyond += padded(payload(tag));
    entry += 12;
  }
  view.setUint32(entry, next, true);
}

function values(tag: Tag, view: DataView, at: number): void {
  if (typeof tag.values === 'string') {
    new TextEncoder().encode(tag.values).forEach((byte, i) => {
      view.setUint8(at + i, byte);
    });
    return;
  }
  tag.values.forEach((value, i) => {
    if (tag.type === 'short') view.setUint16(at + 2 * i, value, true);
    else if (tag.type === 'long') view.setUint32(at + 4 * i, value, true);
    else view.setFloat64(at + 8 * i, value, true);
  });
}

const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');
