import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type GroundLayer, heightAt, joinTiles, sampleLine } from '../../src/terrain/index.ts';
import { groundFrom } from '../helpers/plane-ground.ts';

const SIZE = 41;
const whole = groundFrom((x, y) => 100 + Math.sin(x / 3) + 0.4 * y, SIZE);
const { plane } = whole;

/** The part of a layer from column and row, so many cells wide and high; `say` overrides what it says of itself. */
function part(
  layer: GroundLayer,
  left: number,
  top: number,
  width: number,
  height: number,
  say: Partial<GroundLayer['info']> = {},
): GroundLayer {
  const { grid } = layer;
  const data = new Float64Array(width * height);
  for (let row = 0; row < height; row++) {
    const from = (top + row) * grid.width + left;
    data.set(grid.data.subarray(from, from + width), row * width);
  }
  const fit = layer.fit.slice();
  fit[0] -= left;
  fit[4] -= top;
  const place = { x0: grid.x0 + left * grid.stepX, y0: grid.y0 - top * grid.stepY };
  return { info: { ...layer.info, ...say }, grid: { ...grid, ...place, width, height, data }, fit };
}

describe('joinTiles', () => {
  const [layer] = whole.layers;
  const quarters = [
    part(layer, 20, 0, 21, 15, { source: 'ne.tif' }),
    part(layer, 0, 0, 20, 15, { source: 'nw.tif' }),
    part(layer, 0, 15, 20, 26, { source: 'sw.tif' }),
    part(layer, 20, 15, 21, 26, { source: 'se.tif' }),
  ];

  it('leaves no strip without ground between tiles that abut', () => {
    expect(heightAt({ plane, layers: quarters }, -0.5, 0)).toBeNaN();
    const joined = { plane, layers: joinTiles(quarters) };
    expect(joined.layers).toHaveLength(1);
    expect(joined.layers[0].info.source).toBe('ne.tif, nw.tif, sw.tif, se.tif');
    const at = fc.double({ min: -20, max: 20, noNaN: true });
    fc.assert(
      fc.property(at, at, (x, y) => {
        expect(heightAt(joined, x, y)).toBeCloseTo(heightAt(whole, x, y), 9);
      }),
      { seed: 12 },
    );
    const across = new Float64Array(81);
    sampleLine(joined, -20, 7, 0.5, -0.1, 81, across);
    expect(across.every((height) => height > 80)).toBe(true);
  });

  it('takes the earlier tile where two overlap, and the later one in its holes', () => {
    const east = part(layer, 15, 0, 26, SIZE);
    const west = part(layer, 0, 0, 25, SIZE);
    east.grid.data.fill(7);
    east.grid.data[3 * 26 + 4] = Number.NaN;
    const [joined] = joinTiles([east, west]);
    expect(joined.grid.width).toBe(SIZE);
    expect(joined.grid.data[3 * SIZE + 20]).toBe(7);
    expect(joined.grid.data[3 * SIZE + 19]).toBe(layer.grid.data[3 * SIZE + 19]);
    expect(joined.grid.data[3 * SIZE + 14]).toBe(layer.grid.data[3 * SIZE + 14]);
  });

  it('keeps a gap between tiles without ground', () => {
    const [joined] = joinTiles([part(layer, 0, 0, 18, SIZE), part(layer, 20, 0, 21, SIZE)]);
    expect(heightAt({ plane, layers: [joined] }, -1.5, 0)).toBeNaN();
    expect(heightAt({ plane, layers: [joined] }, 1.5, 0)).toBeCloseTo(heightAt(whole, 1.5, 0), 9);
  });

  it('takes what the tiles say at its worst', () => {
    const [joined] = joinTiles([
      part(layer, 0, 0, 20, SIZE, { verticalRmseM: 0.05, collectedOn: '2019-05-01', kind: 'bare earth' }),
      part(layer, 20, 0, 21, SIZE, {
        verticalRmseM: 0.1,
        collectedOn: '2021-05-01',
        kind: 'unknown',
        verticalUnitAssumed: true,
      }),
    ]);
    expect(joined.info).toMatchObject({
      verticalRmseM: 0.1,
      collectedOn: null,
      kind: 'unknown',
      verticalUnitAssumed: true,
    });
    const [silent] = joinTiles([part(layer, 0, 0, 20, SIZE), part(layer, 20, 0, 21, SIZE, { verticalRmseM: null })]);
    expect(silent.info.verticalRmseM).toBeNull();
  });

  it('joins nothing that is on another lattice, cell or system', () => {
    const other = (change: Partial<GroundLayer['grid']>, say: Partial<GroundLayer['info']> = {}): GroundLayer => {
      const tile = part(layer, 20, 0, 21, SIZE, say);
      return { ...tile, grid: { ...tile.grid, ...change } };
    };
    const west = part(layer, 0, 0, 20, SIZE);
    for (const east of [
      other({ x0: 0.3 }),
      other({ y0: 20.4 }),
      other({ stepX: 2 }),
      other({}, { crs: 'EPSG:32610' }),
    ]) {
      expect(joinTiles([west, east])).toEqual([west, east]);
    }
  });
});
