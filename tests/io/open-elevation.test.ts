import { describe, expect, it } from 'vitest';
import { localPlane } from '../../src/geo/index.ts';
import { type ElevationOptions, openElevation, readGround } from '../../src/io/elevation/index.ts';
import { memorySource } from '../../src/io/memory/index.ts';
import { heightAt } from '../../src/terrain/index.ts';
import { makeTiff, type OddTiff, somewhere } from '../helpers/make-tiff.ts';

/** A plane that rises 2 m a cell to the east and 3 m a cell to the south, so that any slip of a cell shows. */
const slope = (width: number, height: number): number[] =>
  Array.from({ length: width * height }, (_, i) => 500 + 2 * (i % width) + 3 * Math.floor(i / width));

const spec: OddTiff = { width: 12, height: 9, heights: slope(12, 9), ...somewhere };

const open = (tiff: OddTiff, options?: ElevationOptions) =>
  openElevation(memorySource(makeTiff(tiff), 'ground.tif'), options);

/** The whole grid, and where its north-west cell lies. */
async function gridOf(tiff: OddTiff, options?: ElevationOptions) {
  const source = await open(tiff, options);
  const map = await source.readForMap(source.bounds, 0);
  return { ...map!.grid, info: source.info };
}

describe('where the cells lie', () => {
  it('takes the tie point for a corner where cells are areas, also where the key is missing', async () => {
    const area = await gridOf(spec);
    expect([area.x0, area.y0, area.stepX, area.stepY]).toEqual([580000.5, 4871999.5, 1, 1]);
    const silent = await gridOf({
      ...spec,
      keys: [
        [1024, 1],
        [3072, 32609],
      ],
    });
    expect([silent.x0, silent.y0]).toEqual([580000.5, 4871999.5]);
    expect([...area.data]).toEqual(spec.heights);
  });

  it('takes it for a centre where cells are points', async () => {
    const point = await gridOf({
      ...spec,
      keys: [
        [1024, 1],
        [1025, 2],
        [3072, 32609],
      ],
    });
    expect([point.x0, point.y0]).toEqual([580000, 4872000]);
  });

  it('minds a tie point that is not the first cell', async () => {
    const tied = await gridOf({ ...spec, tie: [5, 4, 0, 580005, 4871996, 0] });
    expect([tied.x0, tied.y0]).toEqual([580000.5, 4871999.5]);
    const point = await gridOf({
      ...spec,
      tie: [5, 4, 0, 580005, 4871996, 0],
      keys: [
        [1024, 1],
        [1025, 2],
        [3072, 32609],
      ],
    });
    expect([point.x0, point.y0]).toEqual([580000, 4872000]);
  });

  it('reads a transformation matrix, and turns a south-up raster round', async () => {
    const { scale: _, tie: __, ...unplaced } = spec;
    const northUp = await gridOf({ ...unplaced, matrix: [1, 0, 0, 580000, 0, -1, 0, 4872000, 0, 0, 0, 0, 0, 0, 0, 1] });
    expect([northUp.x0, northUp.y0]).toEqual([580000.5, 4871999.5]);
    expect([...northUp.data]).toEqual(spec.heights);
    const southUp = await gridOf({ ...unplaced, matrix: [1, 0, 0, 580000, 0, 1, 0, 4871991, 0, 0, 0, 0, 0, 0, 0, 1] });
    expect([southUp.x0, southUp.y0]).toEqual([580000.5, 4871999.5]);
    for (let row = 0; row < 9; row++) {
      expect([...southUp.data.subarray(row * 12, row * 12 + 12)]).toEqual(
        slope(12, 9).slice((8 - row) * 12, (9 - row) * 12),
      );
    }
  });

  it('reads the same height at the same place north up and south up, in any part of the raster', async () => {
    const { scale: _, tie: __, ...unplaced } = spec;
    const upright = { ...spec, width: 70, height: 90, heights: slope(70, 90) };
    const turned: OddTiff = {
      ...unplaced,
      width: 70,
      height: 90,
      tile: 16,
      heights: Array.from({ length: 90 }, (_, row) => slope(70, 90).slice((89 - row) * 70, (90 - row) * 70)).flat(),
      matrix: [1, 0, 0, 580000, 0, 1, 0, 4871910, 0, 0, 0, 0, 0, 0, 0, 1],
    };
    const sources = await Promise.all([open(upright), open(turned)]);
    const at = { lon: (sources[0].bounds.west * 2 + sources[0].bounds.east) / 3, lat: sources[0].bounds.south + 2e-4 };
    const plane = localPlane(at);
    const [first, second] = await Promise.all(
      sources.map(async (source) => heightAt(await readGround([source], plane, { x: 0, y: 0 }, 9), 0, 0)),
    );
    expect(first).toBeGreaterThan(500);
    expect(second).toBeCloseTo(first, 6);
  });
});

describe('missing ground', () => {
  it('is NaN where the file leaves a tile out, whatever no-data number it declares', async () => {
    const sparse = { ...spec, tile: 16, width: 40, height: 40, heights: slope(40, 40), sparse: [4] };
    for (const noData of [undefined, 'nan', '-9999', '0']) {
      const grid = await gridOf({ ...sparse, ...(noData === undefined ? {} : { noData }) });
      expect(grid.data[20 * 40 + 20], `no-data ${noData}`).toBeNaN();
      expect(grid.data[20 * 40 + 15]).toBe(500 + 30 + 60);
      expect(grid.data[20 * 40 + 32]).toBe(500 + 64 + 60);
    }
  });

  it('is found by the tag, in texts that are longer than the number', async () => {
    const heights = [...slope(12, 9)];
    heights[7] = -3.4028234663852886e38;
    heights[8] = -9999;
    const lowest = await gridOf({ ...spec, heights, noData: '-3.40282346638528859811704183484516925e+38' });
    expect(lowest.data[7]).toBeNaN();
    const spaced = await gridOf({ ...spec, heights, noData: '  -9999 ' });
    expect(spaced.data[8]).toBeNaN();
    await expect(gridOf({ ...spec, noData: 'none' })).rejects.toThrow(/no-data number "none", which is no number/);
  });
});

describe('how numbers are stored', () => {
  it.each(['int16', 'uint16', 'int32', 'uint32', 'float32', 'float64'] as const)(
    'reads %s, little and big end first',
    async (sample) => {
      for (const bigEndian of [false, true]) {
        for (const predictor of [1, 2] as const) {
          const grid = await gridOf({ ...spec, sample, bigEndian, predictor, compression: 5, tile: 16 });
          expect([...grid.data], `big end first ${bigEndian}, predictor ${predictor}`).toEqual(spec.heights);
        }
      }
    },
  );

  it('reads lists of offsets that lie outside the directory, big end first, and BigTIFF', async () => {
    const many = { ...spec, width: 60, height: 400, heights: slope(60, 400), stripRows: 1 };
    for (const variant of [{}, { bigEndian: true }, { big: true }, { big: true, bigEndian: true }]) {
      const grid = await gridOf({ ...many, ...variant });
      expect([...grid.data], JSON.stringify(variant)).toEqual(many.heights);
    }
  });

  it('reads signed bytes and a last strip that is shorter', async () => {
    const heights = Array.from({ length: 35 }, (_, i) => i * 3 - 50);
    const grid = await gridOf({ ...spec, width: 5, height: 7, heights, sample: 'int8', stripRows: 3, compression: 8 });
    expect([...grid.data]).toEqual(heights);
  });

  it('scales and shifts by the metadata', async () => {
    const metadata =
      '<GDALMetadata><Item name="SCALE" sample="0" role="scale">0.1</Item><Item name="OFFSET" sample="0" role="offset">100</Item></GDALMetadata>';
    const grid = await gridOf({ ...spec, sample: 'uint16', metadata });
    expect(grid.data[0]).toBeCloseTo(150, 4);
    expect(grid.data[1]).toBeCloseTo(150.2, 4);
  });
});

describe('what the file says of itself', () => {
  const items = (text: string) => ({ metadata: `<GDALMetadata>${text}</GDALMetadata>` });

  it('names kind, accuracy and date; what it does not say stays unknown', async () => {
    const told = await open({
      ...spec,
      ...items(
        '<Item name="VERTICAL_RMSE_M">0.05</Item><Item name="TERRAIN_KIND">bare earth</Item><Item name="COLLECTED_ON">2023-06-18</Item>',
      ),
    });
    expect(told.info).toMatchObject({
      source: 'ground.tif',
      crs: 'EPSG:32609',
      cellM: 1,
      kind: 'bare earth',
      verticalRmseM: 0.05,
      collectedOn: '2023-06-18',
    });
    const silent = await open({ ...spec, tags: [[306, 2, [...Buffer.from('2024:01:01 00:00:00\0')]]] });
    expect(silent.info).toMatchObject({ kind: 'unknown', verticalRmseM: null, collectedOn: null });
  });

  it('lets the user fill in and better, but not contradict', async () => {
    const kind = items('<Item name="TERRAIN_KIND">surface</Item><Item name="VERTICAL_RMSE_M">0.1</Item>');
    expect((await open({ ...spec, ...kind }, { kind: 'surface', verticalRmseM: 0.2 })).info).toMatchObject({
      kind: 'surface',
      verticalRmseM: 0.2,
    });
    expect((await open(spec, { kind: 'surface' })).info.kind).toBe('surface');
    expect((await open(spec, { collectedOn: '2024-05-31' })).info.collectedOn).toBe('2024-05-31');
    // A later day than the file's own would make heights newer than a slide that they are older than.
    const dated = items('<Item name="COLLECTED_ON">2023-06-18</Item>');
    expect((await open({ ...spec, ...dated }, { collectedOn: '2026-01-01' })).info.collectedOn).toBe('2023-06-18');
    await expect(open({ ...spec, ...kind }, { kind: 'bare earth' })).rejects.toThrow(
      'ground.tif says that it is a surface model, but bare-earth was given; leave the terrain kind out or correct the file.',
    );
    await expect(open({ ...spec, ...items('<Item name="VERTICAL_RMSE_M">five</Item>') })).rejects.toThrow(
      /VERTICAL_RMSE_M "five"/,
    );
    await expect(open({ ...spec, ...items('<Item name="COLLECTED_ON">June</Item>') })).rejects.toThrow(
      /COLLECTED_ON "June"/,
    );
  });
});
