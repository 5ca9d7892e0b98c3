import { describe, expect, it } from 'vitest';
import { type LocalPlane, localPlane } from '../../src/geo/index.ts';
import { decodeHere } from '../../src/io/decode/index.ts';
import {
  type ByteSource,
  type DecodePool,
  type ElevationSource,
  openElevation,
  readGround,
} from '../../src/io/elevation/index.ts';
import { memorySource, recordingSource } from '../../src/io/memory/index.ts';
import { blockStore, openTiff, rasterImage } from '../../src/io/tiff/index.ts';
import { makeTiff, type OddTiff, somewhere } from '../helpers/make-tiff.ts';

const SIDE = 640;
const heights = Float32Array.from(
  { length: SIDE * SIDE },
  (_, i) => 500 + (i % SIDE) * 0.25 + Math.floor(i / SIDE) * 0.5,
);
const spec: OddTiff = { width: SIDE, height: SIDE, heights, tile: 64, ...somewhere };
const file = makeTiff(spec);
const TILE_BYTES = 64 * 64 * 4;

function planeAt({ bounds }: ElevationSource, east: number, north: number): LocalPlane {
  const { west, south } = bounds;
  return localPlane({
    lon: west + (bounds.east - west) * east,
    lat: south + (bounds.north - south) * north,
  });
}

describe('reading a window', () => {
  it('opens in two reads, then touches only the tiles of the window', async () => {
    const source = recordingSource(memorySource(file, 'ground.tif'));
    const raster = await openElevation(source);
    expect(source.reads.length).toBeLessThanOrEqual(2);
    source.forget();
    const ground = await readGround([raster], planeAt(raster, 0.5, 0.5), { x: 0, y: 0 }, 20);
    const { grid } = ground.layers[0];
    const tiles = Math.ceil((grid.width + 63) / 64) * Math.ceil((grid.height + 63) / 64);
    expect(source.bytesRead()).toBeGreaterThan(0);
    expect(source.bytesRead()).toBeLessThanOrEqual(tiles * TILE_BYTES);
    source.forget();
    await readGround([raster], planeAt(raster, 0.5, 0.5), { x: 2, y: 1 }, 18);
    expect(source.reads).toEqual([]);
  });

  it('joins neighbouring blocks into one read', async () => {
    const strips = recordingSource(
      memorySource(makeTiff({ ...spec, tile: undefined as never, stripRows: 2 }), 'strips.tif'),
    );
    const raster = await openElevation(strips);
    strips.forget();
    await readGround([raster], planeAt(raster, 0.5, 0.5), { x: 0, y: 0 }, 100);
    // Some 210 rows in strips of two, which lie one behind the other.
    expect(strips.reads).toHaveLength(1);
    expect(strips.bytesRead()).toBeLessThan(220 * SIDE * 4);
  });

  it('reads only the rows that it needs of one uncompressed strip as large as the file', async () => {
    const one = recordingSource(
      memorySource(makeTiff({ ...spec, tile: undefined as never, stripRows: SIDE }), 'strip.tif'),
    );
    const raster = await openElevation(one);
    one.forget();
    const ground = await readGround([raster], planeAt(raster, 0.5, 0.5), { x: 0, y: 0 }, 20);
    expect(one.bytesRead()).toBeLessThan(110 * SIDE * 4);
    const { grid } = ground.layers[0];
    const row = Math.round(4872000 - 0.5 - grid.y0);
    const col = Math.round(grid.x0 - 580000.5);
    expect(grid.data[5 * grid.width + 7]).toBe(heights[(row + 5) * SIDE + col + 7]);
  });

  it('answers null where the raster does not reach, and cuts the window at its border', async () => {
    const raster = await openElevation(memorySource(file, 'ground.tif'));
    const away = planeAt(raster, 3, 0.5);
    expect(await raster.readLayer(away, { x: 0, y: 0 }, 100)).toBeNull();
    expect((await readGround([raster], away, { x: 0, y: 0 }, 100)).layers).toEqual([]);
    const corner = await raster.readLayer(planeAt(raster, 0, 1), { x: 0, y: 0 }, 50);
    expect(corner!.grid.width).toBeGreaterThan(45);
    expect(corner!.grid.width).toBeLessThan(65);
    expect(corner!.grid.x0).toBe(580000.5);
  });

  it('says which positions it covers, the border cells included', async () => {
    const raster = await openElevation(memorySource(file, 'ground.tif'));
    const at = (east: number, north: number) => planeAt(raster, east, north).origin;
    expect(raster.covers(at(0.5, 0.5))).toBe(true);
    expect(raster.covers(at(0.02, 0.02))).toBe(true);
    expect(raster.covers(at(-0.05, 0.5))).toBe(false);
    expect(raster.covers(at(0.5, 1.05))).toBe(false);
    // Where the projection folds back upon itself.
    expect(raster.covers({ lon: 52, lat: 44 })).toBe(false);
    expect(raster.covers({ lon: Number.NaN, lat: 44 })).toBe(false);
  });

  it('puts the finest raster first, and joins tiles of one lattice in their order', async () => {
    const coarse: OddTiff = { ...spec, width: 64, height: 64, scale: [10, 10, 0] };
    const names = ['a.tif', 'coarse.tif', 'b.tif'];
    const tiffs = [spec, coarse, spec];
    const rasters = await Promise.all(names.map((name, i) => openElevation(memorySource(makeTiff(tiffs[i]), name))));
    const ground = await readGround(rasters, planeAt(rasters[0], 0.5, 0.5), { x: 0, y: 0 }, 30);
    expect(ground.layers.map((layer) => layer.info.source)).toEqual(['a.tif, b.tif', 'coarse.tif']);
    expect(ground.layers.map((layer) => layer.info.cellM)).toEqual([1, 10]);
  });
});

describe('overviews', () => {
  it('serve the map, from the coarsest whose cells are not over the wanted size, never a study', async () => {
    const level = (side: number, value: number): OddTiff => ({
      ...spec,
      width: side,
      height: side,
      heights: new Array<number>(side * side).fill(value),
      kind: 1,
    });
    const source = memorySource(makeTiff({ ...spec, more: [level(160, 40), level(320, 20)] }), 'ground.tif');
    const raster = await openElevation(source);
    const first = async (cellM: number) => (await raster.readForMap(raster.bounds, cellM))!.grid;
    expect((await first(1.9)).data[5]).toBe(heights[5]);
    expect((await first(2)).data[5]).toBe(20);
    expect((await first(3.9)).data[5]).toBe(20);
    const coarse = await first(100);
    expect(coarse.data[5]).toBe(40);
    expect([coarse.stepX, coarse.x0, coarse.y0]).toEqual([4, 580002, 4871998]);
    const ground = await readGround([raster], planeAt(raster, 0.5, 0.5), { x: 0, y: 0 }, 30);
    expect(ground.layers[0].grid.stepX).toBe(1);
  });

  it('place positions on the grid that they return', async () => {
    const raster = await openElevation(memorySource(file, 'ground.tif'));
    const { west, south, east, north } = raster.bounds;
    const box = {
      west: west * 0.6 + east * 0.4,
      east: west * 0.4 + east * 0.6,
      south: south * 0.6 + north * 0.4,
      north: south * 0.4 + north * 0.6,
    };
    const map = (await raster.readForMap(box, 0))!;
    expect(map.grid.width).toBeLessThan(SIDE / 3);
    const at = planeAt(raster, 0.5, 0.5).origin;
    const { col, row } = map.toIndex(at);
    const value = map.grid.data[Math.round(row) * map.grid.width + Math.round(col)];
    expect(Math.abs(value - (500 + 320 * 0.25 + 320 * 0.5))).toBeLessThan(2);
    expect(await raster.readForMap({ west: 0, south: 0, east: 1, north: 1 }, 0)).toBeNull();
  });
});

/** A source whose reads wait until they are let through. */
function gated(source: ByteSource) {
  const waiting: { go(): void; signal: AbortSignal | undefined }[] = [];
  return {
    waiting,
    source: {
      ...source,
      read: (offset: number, length: number, signal?: AbortSignal) =>
        new Promise<ArrayBuffer>((resolve, reject) => {
          signal?.addEventListener('abort', () => reject(signal.reason), { once: true });
          waiting.push({ go: () => source.read(offset, length).then(resolve, reject), signal });
        }),
    } satisfies ByteSource,
  };
}

async function storeOf(source: ByteSource, kept: number, pool: DecodePool = decodeHere) {
  const tiff = await openTiff(memorySource(file, 'ground.tif'));
  const image = await rasterImage(tiff.images[0], true, { noData: null, scale: 1, offset: 0 }, 'ground.tif');
  return blockStore(source, image, pool, kept);
}

describe('the block store', () => {
  const far = [0, 20, 40, 60];

  it('shares a block under way, and keeps it going for one who waits when another gives up', async () => {
    const gate = gated(memorySource(file, 'ground.tif'));
    const store = await storeOf(gate.source, 1e6);
    const abort = new AbortController();
    const got: number[] = [];
    const first = store.each([0, 20], () => {}, abort.signal);
    const second = store.each([20], (index) => got.push(index));
    const settled = expect(first).rejects.toThrow('moved on');
    await expect.poll(() => gate.waiting.length).toBe(2);
    abort.abort(new Error('moved on'));
    await settled;
    expect(gate.waiting.map(({ signal }) => signal?.aborted)).toEqual([true, false]);
    gate.waiting[1].go();
    await second;
    expect(got).toEqual([20]);
  });

  it('ends a read that nobody waits for, and starts afresh for whoever comes next', async () => {
    const gate = gated(memorySource(file, 'ground.tif'));
    const store = await storeOf(gate.source, 1e6);
    const abort = new AbortController();
    const first = store.each([0], () => {}, abort.signal);
    const settled = expect(first).rejects.toThrow('moved on');
    await expect.poll(() => gate.waiting.length).toBe(1);
    abort.abort(new Error('moved on'));
    await settled;
    const next = store.each([0], () => {});
    await expect.poll(() => gate.waiting.length).toBe(2);
    gate.waiting[1].go();
    await next;
  });

  it('lets the least recently used blocks go, and no more than it must', async () => {
    const source = recordingSource(memorySource(file, 'ground.tif'));
    const store = await storeOf(source, 2.5 * TILE_BYTES);
    const reads = async (index: number) => {
      const before = source.reads.length;
      await store.each([index], () => {});
      return source.reads.length - before;
    };
    expect([await reads(0), await reads(20), await reads(0)]).toEqual([1, 1, 0]);
    expect([await reads(40), await reads(0), await reads(20)]).toEqual([1, 0, 1]);
  });

  it('hands out every block of a window larger than what it keeps', async () => {
    const store = await storeOf(memorySource(file, 'ground.tif'), TILE_BYTES);
    const got: number[] = [];
    await store.each(
      Array.from({ length: 100 }, (_, i) => i),
      (index, block) => {
        got.push(index);
        expect(block![0]).toBe(heights[Math.floor(index / 10) * 64 * SIDE + (index % 10) * 64]);
      },
    );
    expect(got.sort((a, b) => a - b)).toEqual(Array.from({ length: 100 }, (_, i) => i));
  });

  it('does not remember a failure, of reading or of decoding', async () => {
    let failures = 2;
    const pool: DecodePool = {
      ...decodeHere,
      decode: (format, packed, signal) =>
        failures-- > 0 ? Promise.reject(new Error('broken')) : decodeHere.decode(format, packed, signal),
    };
    const store = await storeOf(memorySource(file, 'ground.tif'), 1e6, pool);
    await expect(store.each(far, () => {})).rejects.toThrow('broken');
    const got: number[] = [];
    await store.each(far, (index) => got.push(index));
    expect(got).toHaveLength(4);
  });
});
