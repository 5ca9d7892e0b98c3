import { describe, expect, it } from 'vitest';
import { localPlane } from '../../src/geo/index.ts';
import { type ElevationOptions, openElevation, readGround } from '../../src/io/elevation/index.ts';
import { memorySource } from '../../src/io/memory/index.ts';
import { UserError } from '../../src/units/index.ts';
import { makeTiff, type OddTiff, somewhere } from '../helpers/make-tiff.ts';

const spec: OddTiff = { width: 8, height: 8, heights: new Array<number>(64).fill(700), ...somewhere };

const openBytes = (bytes: Uint8Array, options?: ElevationOptions) =>
  openElevation(memorySource(bytes, 'ground.tif'), options);
const open = (tiff: OddTiff, options?: ElevationOptions) => openBytes(makeTiff(tiff), options);

/** The one sentence of a refusal; fails where there is none. */
async function sentence(opening: Promise<unknown>): Promise<string> {
  const error = await opening.then(
    () => null,
    (reason: unknown) => reason,
  );
  expect(error).toBeInstanceOf(UserError);
  const { message } = error as UserError;
  expect(message).toMatch(/^\S.*[.]$/s);
  expect(message).not.toContain('\n');
  return message;
}

const keys = (...more: [number, number][]) => ({ keys: [[1024, 1], [1025, 1], ...more] as [number, number][] });

describe('a file that is no elevation raster is refused in one sentence', () => {
  it.each([
    [
      'an empty file',
      new Uint8Array(0),
      'ground.tif is no GeoTIFF: it is empty; give an elevation raster as GeoTIFF (.tif).',
    ],
    [
      'a web page',
      new TextEncoder().encode('<!DOCTYPE html><html>'),
      'ground.tif is no GeoTIFF: it begins with "<!DOCTYPE ht"; give an elevation raster as GeoTIFF (.tif).',
    ],
    [
      'noise',
      Uint8Array.of(0, 1, 2, 255, 4),
      'ground.tif is no GeoTIFF: it begins with the bytes 00 01 02 ff; give an elevation raster as GeoTIFF (.tif).',
    ],
  ])('%s', async (_, bytes, expected) => {
    expect(await sentence(openBytes(bytes))).toBe(expected);
  });

  it('a file cut off in its directory, anywhere', async () => {
    const bytes = makeTiff(spec);
    for (let cut = 8; cut < bytes.length - 4; cut += 7) {
      const text = await sentence(openBytes(bytes.subarray(0, cut)));
      expect(text, `cut at ${cut}`).toMatch(/ground\.tif/);
    }
  });

  const stripped: OddTiff = {
    ...spec,
    width: 64,
    height: 64,
    heights: new Array<number>(4096).fill(700),
    blocksLast: true,
  };
  const tiled: OddTiff = { ...stripped, tile: 16 };
  const cutOff =
    /^ground\.tif ends at byte \d+ where its directory promises \d+: it is cut off; copy or download it again\.$/;

  it.each<[string, OddTiff]>([
    ['tiles', tiled],
    ['packed tiles', { ...tiled, compression: 8, heights: Array.from({ length: 4096 }, (_, i) => 700 + Math.sin(i)) }],
    ['strips', { ...stripped, stripRows: 8 }],
    ['one strip, read by rows', { ...stripped, stripRows: 64 }],
    ['tiles of which some are left out', { ...tiled, sparse: [0, 7, 15] }],
    ['tiles in big-endian order', { ...tiled, bigEndian: true }],
    ['tiles of a BigTIFF', { ...tiled, big: true }],
    [
      'an overview',
      { ...tiled, more: [{ ...tiled, width: 32, height: 32, heights: new Array<number>(1024).fill(700), kind: 1 }] },
    ],
  ])('a file cut off in its heights, when it is opened: %s', async (_, tiff) => {
    const bytes = makeTiff(tiff);
    await (await openBytes(bytes)).close();
    for (const missing of [1, 100, 1000]) {
      expect(await sentence(openBytes(bytes.subarray(0, bytes.length - missing))), `${missing} missing`).toMatch(
        cutOff,
      );
    }
  });

  it('but not one whose last tiles are left out, nor one whose size its source does not know', async () => {
    await (await open({ ...tiled, sparse: [13, 14, 15] })).close();
    const bytes = makeTiff(tiled);
    const short = memorySource(bytes.subarray(0, bytes.length - 100), 'ground.tif');
    await (await openElevation({ ...short, size: async () => null })).close();
  });

  it('a file cut off while it is open, at the first read', async () => {
    const directoryFirst = makeTiff({
      ...spec,
      width: 300,
      height: 300,
      heights: new Array<number>(90_000).fill(700),
      stripRows: 10,
    });
    const source = await openBytes(directoryFirst);
    const short = memorySource(directoryFirst, 'ground.tif');
    const cutting = await openElevation({
      ...short,
      read: async (offset, length, signal) => {
        const bytes = await short.read(offset, length, signal);
        return length > 65_536 ? bytes.slice(0, 100) : bytes;
      },
    });
    const middle = {
      lon: (source.bounds.west + source.bounds.east) / 2,
      lat: (source.bounds.south + source.bounds.north) / 2,
    };
    const reading = readGround([cutting], localPlane(middle), { x: 0, y: 0 }, 140);
    expect(await sentence(reading)).toMatch(
      /ground\.tif ends at byte \d+ where its directory promises \d+: it is cut off; copy or download it again\./,
    );
  });

  it('directories in a loop', async () => {
    const bytes = makeTiff({ ...spec, more: [{ ...spec, width: 4, height: 4, kind: 1 }] });
    const view = new DataView(bytes.buffer);
    const first = view.getUint32(4, true);
    const second = first + 2 + view.getUint16(first, true) * 12;
    const last = view.getUint32(second, true);
    view.setUint32(last + 2 + view.getUint16(last, true) * 12, first, true);
    expect(await sentence(openBytes(bytes))).toMatch(/directory cannot be read/);
  });
});

describe('a raster that would be misread is refused in one sentence', () => {
  const { tie: _, scale: __, ...unplaced } = spec;

  it.each<[string, OddTiff, string]>([
    [
      'several bands',
      { ...spec, bands: 3 },
      'ground.tif has 3 bands; one band of heights is expected: take it out with "gdal_translate -b 1".',
    ],
    [
      'JPEG',
      { ...spec, compression: 7 },
      'ground.tif is compressed with JPEG, which is not read here; write it again with deflate, for example "gdal_translate -co COMPRESS=DEFLATE".',
    ],
    [
      'an unknown compression',
      { ...spec, compression: 12345 },
      'ground.tif is compressed with code 12345, which is not read here; write it again with deflate, for example "gdal_translate -co COMPRESS=DEFLATE".',
    ],
    [
      '64-bit whole numbers',
      { ...spec, sample: 'uint64' },
      'ground.tif stores uint64 numbers; 8, 16 or 32 bit whole numbers or 32 or 64 bit floats are expected: write it again with "gdal_translate -ot Float32".',
    ],
    [
      'no place',
      unplaced,
      'ground.tif does not say where it lies (no tie point, no matrix); give a GeoTIFF with its position.',
    ],
    [
      'control points',
      { ...unplaced, tie: [0, 0, 0, 1, 1, 0, 5, 5, 0, 2, 2, 0] },
      'ground.tif is placed by control points; place its cells on a grid first, with "gdalwarp".',
    ],
    [
      'a turned grid',
      { ...unplaced, matrix: [1, 0.2, 0, 580000, 0.2, -1, 0, 4872000, 0, 0, 0, 0, 0, 0, 0, 1] },
      'ground.tif is turned against its grid; turn it north up first, with "gdalwarp".',
    ],
    [
      'a mirrored grid',
      { ...unplaced, matrix: [-1, 0, 0, 580000, 0, -1, 0, 4872000, 0, 0, 0, 0, 0, 0, 0, 1] },
      'ground.tif has cells of -1 × 1, which are mirrored or have no size; write it again with "gdalwarp".',
    ],
    [
      'a negative cell height',
      { ...spec, scale: [1, -1, 0] },
      'ground.tif has a negative cell height, which programs read in two ways; write it again with "gdalwarp", north up.',
    ],
    [
      'a scale of heights in the tie point',
      { ...spec, scale: [1, 1, 0.3048] },
      'ground.tif multiplies its heights by 0.3048 in its tie point scale, which is not read here; write the heights out with "gdal_translate".',
    ],
    [
      'a mask image',
      { ...spec, more: [{ ...spec, sample: 'uint8', kind: 4 }] },
      'ground.tif hides cells by a mask image, which is not read here; write the mask into the heights with "gdalwarp -dstnodata -9999".',
    ],
  ])('%s', async (_name, tiff, expected) => {
    expect(await sentence(open(tiff))).toBe(expected);
  });

  it('a mask of an overview is no mask of the heights', async () => {
    const overview = { ...spec, width: 4, height: 4, heights: new Array<number>(16).fill(700), kind: 1 };
    await open({ ...spec, more: [overview, { ...overview, sample: 'uint8', kind: 5 }] });
  });
});

describe('the unit of heights', () => {
  const unit = async (tiff: Partial<OddTiff>, options?: ElevationOptions) => {
    const { info } = await open({ ...spec, ...tiff }, options);
    return [info.verticalUnit, info.verticalUnitAssumed];
  };
  const utm: [number, number] = [3072, 32609];
  const worded = (text: string) => ({
    metadata: `<GDALMetadata><Item name="UNITTYPE" sample="0" role="unittype">${text}</Item></GDALMetadata>`,
  });

  it('is taken from the keys or the metadata, else metres, told as taken', async () => {
    expect(await unit({})).toEqual(['m', true]);
    expect(await unit(keys(utm, [4099, 9001]))).toEqual(['m', false]);
    expect(await unit(keys(utm, [4099, 9002]))).toEqual(['ft', false]);
    expect(await unit(keys(utm, [4099, 9003]))).toEqual(['us-ft', false]);
    expect(await unit(worded('US survey foot'))).toEqual(['us-ft', false]);
    expect(await unit(worded('metre'))).toEqual(['m', false]);
  });

  it('may be given where the file does not say it; the same twice is fine, another is not', async () => {
    expect(await unit({}, { verticalUnit: 'ft' })).toEqual(['ft', false]);
    expect(await unit(keys(utm, [4099, 9003]), { verticalUnit: 'us-ft' })).toEqual(['us-ft', false]);
    expect(await sentence(unit(keys(utm, [4099, 9003]), { verticalUnit: 'm' }))).toBe(
      'ground.tif states heights in US survey feet, but metres were given (m); leave the vertical unit out or correct the file.',
    );
  });

  it('is asked for where the file contradicts itself or names an unknown one', async () => {
    const both = { ...keys(utm, [4099, 9001]), ...worded('foot') };
    expect(await sentence(unit(both))).toBe(
      'ground.tif states heights in metres and in feet; say which it is with --vertical-unit m, ft or us-ft.',
    );
    expect(await unit(both, { verticalUnit: 'ft' })).toEqual(['ft', false]);
    expect(await sentence(unit(worded('fathom')))).toBe(
      'ground.tif states its heights in "fathom", which is not known here; give --vertical-unit m, ft or us-ft, or convert the file.',
    );
    expect(await sentence(unit(keys(utm, [4099, 9014])))).toMatch(/EPSG unit 9014/);
  });

  it('turns feet into metres', async () => {
    const read = async (options: ElevationOptions) => {
      const source = await open({ ...spec, heights: new Array<number>(64).fill(1000) }, options);
      return (await source.readForMap(source.bounds, 0))!.grid.data[0];
    };
    expect(await read({})).toBe(1000);
    expect(await read({ verticalUnit: 'ft' })).toBeCloseTo(304.8, 4);
    expect(await read({ verticalUnit: 'us-ft' })).toBeCloseTo(304.80061, 4);
  });
});

describe('the coordinate reference system', () => {
  const { keys: _, ...nameless } = spec;

  it('is asked for where the file does not say it, and taken from the user then', async () => {
    expect(await sentence(open(nameless))).toBe(
      'ground.tif does not say in which coordinate reference system it is; give it with --crs EPSG:N.',
    );
    const { info } = await open(nameless, { crs: 'EPSG:32609' });
    expect(info.crs).toBe('EPSG:32609');
  });

  it('may be given twice the same, not twice different', async () => {
    expect((await open(spec, { crs: 'EPSG:32609' })).info.crs).toBe('EPSG:32609');
    expect(await sentence(open(spec, { crs: 'EPSG:32610' }))).toBe(
      'ground.tif states EPSG:32609, but EPSG:32610 was given; leave --crs out or correct the file.',
    );
    expect(await sentence(open(spec, { crs: 'Mercator' }))).toMatch(/--crs is "Mercator", which names no coordinate/);
  });

  it('is refused where its code is unknown, or its keys lack their values', async () => {
    expect(await sentence(open({ ...spec, ...keys([3072, 29999]) }))).toMatch(
      /^ground\.tif names EPSG:29999, which is not in the table/,
    );
    const dangling = {
      ...spec,
      keys: undefined as never,
      tags: [[34735, 3, [1, 1, 0, 1, 3082, 34736, 1, 0]]] as never,
    };
    expect(await sentence(open(dangling))).toBe(
      'ground.tif refers to georeferencing values that it does not hold; write it again with "gdal_translate".',
    );
  });

  it('in feet makes the unit of heights be asked for, unless its vertical system says it', async () => {
    // Georgia West, US survey feet; heights NAVD 88 in metres, feet and US survey feet by their own codes.
    const feet = { ...spec, scale: [3, 3, 0], tie: [0, 0, 0, 2_200_000, 1_400_000, 0] };
    const georgia: [number, number] = [3072, 2240];
    expect(await sentence(open({ ...feet, ...keys(georgia) }))).toBe(
      'ground.tif does not say whether its heights are metres or feet, and its map coordinates are in feet; give --vertical-unit m, ft or us-ft.',
    );
    const stated = async (...more: [number, number][]) =>
      (await open({ ...feet, ...keys(georgia, ...more) })).info.verticalUnit;
    expect(await stated([4096, 5703])).toBe('m');
    expect(await stated([4096, 8228])).toBe('ft');
    expect(await stated([4096, 6360])).toBe('us-ft');
    expect(await stated([4099, 9003])).toBe('us-ft');
    const { info } = await open({ ...feet, ...keys(georgia, [4096, 6360]) });
    expect(info.cellM).toBeCloseTo(3 * (1200 / 3937), 9);
    expect(info.verticalDatum).toMatch(/NAVD88/);
    expect((await open({ ...feet, ...keys(georgia) }, { verticalUnit: 'm' })).info.verticalUnitAssumed).toBe(false);
    expect(await sentence(open({ ...feet, ...keys(georgia, [4096, 6360]) }, { verticalUnit: 'm' }))).toMatch(
      /states heights in US survey feet, but metres were given/,
    );
  });

  it('in degrees and in Mercator tells cells by their size on the ground', async () => {
    const degrees = await open({
      ...spec,
      scale: [1 / 3600, 1 / 3600, 0],
      tie: [0, 0, 0, -128, 60, 0],
      ...keys([2048, 4326]),
    });
    // A second of latitude at 60 degrees is 30.95 m (WGS 84 meridian radius), of longitude half that.
    expect(degrees.info.cellM).toBeCloseTo(30.95, 1);
    expect(degrees.info.verticalUnitAssumed).toBe(true);
    const mercator = await open({
      ...spec,
      scale: [10, 10, 0],
      tie: [0, 0, 0, -14_000_000, 8_399_737, 0],
      ...keys([3072, 3857]),
    });
    expect(mercator.info.cellM).toBeGreaterThan(4.9);
    expect(mercator.info.cellM).toBeLessThan(5.1);
  });
});
