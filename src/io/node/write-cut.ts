import { rename, writeFile } from 'node:fs/promises';
import type { RasterCells, RawGeoKeys } from '../index.ts';
import { halved } from './write-cut-overview.ts';
import { layOut } from './write-geotiff-layout.ts';
import { imageTags, itemTags, placeTags, type Tag } from './write-geotiff-tags.ts';
import { compressTile, type Tiles } from './write-geotiff-tiles.ts';

/** Side of a tile, cells. */
const TILE = 256;
const NO_DATA = -9999;
const LEVEL = 6;
/** GTRasterTypeGeoKey: 1, a cell is an area (OGC GeoTIFF 1.1). */
const RASTER_TYPE = 1025;

/** A window of cells, north row first. */
export interface CellBox {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/**
 * Writes the parts of a raster that lie in `boxes` as one cloud-optimised GeoTIFF: the same cells at the same places in the same
 * system and unit of heights, whole tiles of them, overviews by halves; tiles that no box touches are left out of the file, which
 * readers take for no data. The file appears whole or not at all. Returns its bytes' count; throws `UserError` where it would pass 4 GiB.
 */
export async function writeCut(path: string, cells: RasterCells, boxes: readonly CellBox[]): Promise<number> {
  const whole = hull(boxes);
  const images = [{ width: whole.right - whole.left, height: whole.bottom - whole.top }];
  let level: ReadonlyMap<number, Float32Array> = await fullTiles(cells, whole, boxes);
  const tiles = [await packed(level, images[0]!)];
  for (let last = images[0]!; Math.max(last.width, last.height) > TILE; last = images.at(-1)!) {
    level = halved(level, Math.ceil(last.width / TILE), TILE);
    const image = { width: Math.ceil(last.width / 2), height: Math.ceil(last.height / 2) };
    images.push(image);
    tiles.push(await packed(level, image));
  }
  const corner = await cells.read({ ...whole, right: whole.left + 1, bottom: whole.top + 1 });
  const tags = images.map((image, k): Tag[] => [
    ...imageTags(image, TILE, k > 0, { noData: NO_DATA }),
    ...(k === 0 ? [...placeTags(corner), ...keyTags(cells.keys), ...itemTags([...cells.items], cells.unitType)] : []),
  ]);
  const bytes = layOut(tags, tiles);
  const part = `${path}.part`;
  await writeFile(part, bytes);
  await rename(part, path);
  return bytes.length;
}

/** Tiles of the full resolution that a box touches, by their index, row-major; NaN where there is no data. */
async function fullTiles(
  cells: RasterCells,
  whole: CellBox,
  boxes: readonly CellBox[],
): Promise<Map<number, Float32Array>> {
  const across = Math.ceil((whole.right - whole.left) / TILE);
  const tiles = new Map<number, Float32Array>();
  const wanted = new Set<number>();
  for (const { left, top, right, bottom } of boxes) {
    for (let row = Math.floor((top - whole.top) / TILE); whole.top + row * TILE < bottom; row++) {
      for (let col = Math.floor((left - whole.left) / TILE); whole.left + col * TILE < right; col++) {
        wanted.add(row * across + col);
      }
    }
  }
  for (const index of [...wanted].sort((a, b) => a - b)) {
    const left = whole.left + (index % across) * TILE;
    const top = whole.top + Math.floor(index / across) * TILE;
    const grid = await cells.read({
      left,
      top,
      right: Math.min(whole.right, left + TILE),
      bottom: Math.min(whole.bottom, top + TILE),
    });
    const tile = new Float32Array(TILE * TILE).fill(Number.NaN);
    for (let row = 0; row < grid.height; row++) {
      tile.set(grid.data.subarray(row * grid.width, (row + 1) * grid.width), row * TILE);
    }
    if (tile.some((height) => !Number.isNaN(height))) tiles.set(index, tile);
  }
  return tiles;
}

async function packed(
  tiles: ReadonlyMap<number, Float32Array>,
  size: { width: number; height: number },
): Promise<Tiles> {
  const count = Math.ceil(size.width / TILE) * Math.ceil(size.height / TILE);
  const blocks = Array.from({ length: count }, () => new Uint8Array(0));
  for (const [index, tile] of tiles) {
    const stored = tile.map((height) => (Number.isNaN(height) ? NO_DATA : height));
    blocks[index] = new Uint8Array(await compressTile(stored, TILE, LEVEL));
  }
  return { blocks, offsets: [] };
}

/** The file's own keys, but for the rule that a tie point names a cell's corner. */
function keyTags({ directory, doubles, ascii }: RawGeoKeys): Tag[] {
  const [version = 1, major = 1, minor = 1] = directory;
  const entries: number[][] = [];
  for (let i = 4; i + 3 < directory.length; i += 4) entries.push(directory.slice(i, i + 4));
  const keys = [...entries.filter(([key]) => key !== RASTER_TYPE), [RASTER_TYPE, 0, 1, 1]].sort(
    (a, b) => a[0]! - b[0]!,
  );
  return [
    { id: 34735, type: 'short', values: [version, major, minor, keys.length, ...keys.flat()] },
    ...(doubles.length > 0 ? [{ id: 34736, type: 'double', values: doubles } as const] : []),
    ...(ascii !== '' ? [{ id: 34737, type: 'ascii', values: ascii.replace(/\0+$/, '') } as const] : []),
  ];
}

const hull = (boxes: readonly CellBox[]): CellBox => ({
  left: Math.min(...boxes.map(({ left }) => left)),
  top: Math.min(...boxes.map(({ top }) => top)),
  right: Math.max(...boxes.map(({ right }) => right)),
  bottom: Math.max(...boxes.map(({ bottom }) => bottom)),
});
