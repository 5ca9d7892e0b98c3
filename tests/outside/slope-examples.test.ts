import { describe, expect, it } from 'vitest';
import { rasterProduct } from '../../src/terrain/index.ts';

// Worked examples of one cell and its eight neighbours as a GIS vendor's help prints them, and gdaldem's results on the same
// nine heights [source: slope-example; gdal]. Heights and cells in the same unit, cells of 5 in the slope example.
const steep = [50, 45, 50, 30, 30, 30, 8, 10, 10];
const even = [101, 92, 85, 101, 92, 85, 101, 91, 84];

function middle(
  kind: 'slope' | 'aspect',
  heights: number[],
  formula: 'horn' | 'zevenbergen-thorne',
  cell: number,
): number {
  const shape = { width: 3, height: 3, eastM: cell, northM: cell };
  return rasterProduct({ kind }, shape, Float64Array.from(heights), { formula })[4];
}

describe('published 3 × 3 examples', () => {
  it('slope 75.25762° of dz/dx 0.05 and dz/dy −3.8 (printed; 75.2577 by gdaldem)', () => {
    expect(middle('slope', steep, 'horn', 5)).toBeCloseTo(75.25762, 4);
    expect(middle('slope', steep, 'horn', 5)).toBeCloseTo((Math.atan(Math.hypot(0.05, 3.8)) * 180) / Math.PI, 5);
  });

  it('slope by the middle neighbours alone 74.0546° (gdaldem)', () => {
    expect(middle('slope', steep, 'zevenbergen-thorne', 5)).toBeCloseTo(74.0546, 4);
  });

  it('aspect 92.64° (printed) of the example of aspects, 180.754° of the steep one (gdaldem)', () => {
    expect(middle('aspect', even, 'horn', 5)).toBeCloseTo(92.6425, 4);
    expect(middle('aspect', even, 'zevenbergen-thorne', 5)).toBeCloseTo(93.5763, 4);
    expect(middle('aspect', steep, 'horn', 5)).toBeCloseTo(180.754, 3);
  });

  it('slope of the second example 58.4197° and 58.0448° (gdaldem)', () => {
    expect(middle('slope', even, 'horn', 5)).toBeCloseTo(58.4197, 4);
    expect(middle('slope', even, 'zevenbergen-thorne', 5)).toBeCloseTo(58.0448, 4);
  });

  it('with a missing corner 73.3582° and with a missing side 71.8496° where edges are computed (gdaldem)', () => {
    const shape = { width: 3, height: 3, eastM: 5, northM: 5 };
    const without = (k: number): number => {
      const heights = Float64Array.from(steep);
      heights[k] = Number.NaN;
      return rasterProduct({ kind: 'slope' }, shape, heights, { computeEdges: true })[4];
    };
    expect(without(0)).toBeCloseTo(73.3582, 4);
    expect(without(1)).toBeCloseTo(71.8496, 4);
  });
});
