import { describe, expect, it } from 'vitest';
import { cubicAt, type Ground, heightAt, layerAt, sampleLine, smoothedGradient } from '../../src/terrain/index.ts';
import { groundFrom } from '../helpers/plane-ground.ts';

const tilted = (x: number, y: number): number => 100 + 0.3 * x - 0.7 * y;

describe('sampling', () => {
  it('reads a plane exactly, bilinear and cubic, on and between cell centres', () => {
    const ground = groundFrom(tilted);
    for (const [x, y] of [
      [0, 0],
      [12.25, -7.6],
      [-49.99, 49.99],
      [50, -50],
    ]) {
      expect(heightAt(ground, x, y)).toBeCloseTo(tilted(x, y), 9);
      expect(cubicAt(ground, x, y)).toBeCloseTo(tilted(x, y), 9);
    }
  });

  it('is bilinear: exact for x·y inside a cell', () => {
    const ground = groundFrom((x, y) => x * y);
    expect(heightAt(ground, 3.25, 4.5)).toBeCloseTo(3.25 * 4.5, 9);
  });

  it('keeps a wave of eight cells that bilinear sampling flattens', () => {
    const wave = (x: number): number => Math.sin((2 * Math.PI * x) / 8);
    const ground = groundFrom((x) => wave(x));
    const worst = (read: (x: number) => number): number =>
      Math.max(...Array.from({ length: 160 }, (_, i) => Math.abs(read(i * 0.1) - wave(i * 0.1))));
    expect(worst((x) => heightAt(ground, x, 0))).toBeGreaterThan(0.06);
    expect(worst((x) => cubicAt(ground, x, 0))).toBeLessThan(0.02);
  });

  it('has no height beyond the outer cell centres, nor beside a missing cell', () => {
    const ground = groundFrom((x, y) => (x === 5 && y === 5 ? Number.NaN : 1));
    expect(heightAt(ground, 50.001, 0)).toBeNaN();
    expect(heightAt(ground, 5.5, 5.5)).toBeNaN();
    expect(heightAt(ground, 6.5, 5.5)).toBe(1);
    expect(cubicAt(ground, 6.5, 5.5)).toBe(1);
  });

  it('writes a line without touching its neighbours', () => {
    const ground = groundFrom(tilted);
    const out = new Float64Array(5).fill(-1);
    sampleLine(ground, 1, 2, 0.5, -0.25, 3, out, 1);
    expect([...out]).toEqual([
      -1,
      expect.closeTo(tilted(1, 2), 9),
      expect.closeTo(tilted(1.5, 1.75), 9),
      expect.closeTo(tilted(2, 1.5), 9),
      -1,
    ]);
  });

  it('takes the finest layer that has data and says which one answered', () => {
    const fine = groundFrom(() => 1, 21, 1);
    const coarse = groundFrom(() => 2, 21, 10);
    const ground: Ground = { plane: fine.plane, layers: [...fine.layers, ...coarse.layers] };
    expect([heightAt(ground, 0, 0), layerAt(ground, 0, 0)]).toEqual([1, 0]);
    expect([heightAt(ground, 30, 0), layerAt(ground, 30, 0)]).toEqual([2, 1]);
    expect(layerAt(ground, 500, 0)).toBe(-1);
    expect(heightAt({ plane: fine.plane, layers: [] }, 0, 0)).toBeNaN();
  });
});

describe('smoothedGradient', () => {
  const gradient = (ground: Ground, x: number, y: number): [number, number] => {
    const out = new Float64Array(2);
    smoothedGradient(ground, 1, x, y, out);
    return [out[0], out[1]];
  };

  it('is exact on a plane', () => {
    const [east, north] = gradient(groundFrom(tilted), 3.3, -2.2);
    expect(east).toBeCloseTo(0.3, 9);
    expect(north).toBeCloseTo(-0.7, 9);
  });

  it('points down a cone', () => {
    const [east, north] = gradient(
      groundFrom((x, y) => -Math.hypot(x, y)),
      12,
      16,
    );
    expect((Math.atan2(east, north) * 180) / Math.PI).toBeCloseTo((Math.atan2(-12, -16) * 180) / Math.PI, 1);
  });

  it('is missing where ground is missing', () => {
    expect(gradient(groundFrom(tilted), 49, 0)[0]).toBeNaN();
  });
});
