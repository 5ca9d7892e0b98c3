import { describe, expect, it } from 'vitest';
import { findBench, type StationedLine, sightAlong, stationedLine } from '../../src/road/index.ts';
import { groundFrom } from '../helpers/ground-from.ts';
import { roadInput } from '../helpers/road-bench.ts';

/** A level road of 8 m on a plain, 400 m to the east, with something on it or beside it. */
function straight(height: (x: number, y: number) => number) {
  const ground = groundFrom(height, { west: -10, south: -70, east: 410, north: 70 });
  const line = stationedLine(Float64Array.of(0, 0, 400, 0));
  return { ground, line, bench: findBench(roadInput({ ground, drawn: Float64Array.of(0, 0, 400, 0) }), 50, 350) };
}

describe('sightAlong', () => {
  it('reaches 300 m on level ground, and no farther than the road', () => {
    const { ground, line, bench } = straight(() => 100);
    expect(sightAlong(ground, line, bench, 60)).toEqual({
      before: { distanceM: 60, ends: 'road ends' },
      after: { distanceM: 300, ends: 'limit' },
    });
  });

  it('ends where a crest hides the object: two tangents to a parabola', () => {
    // A crest z = −x²/(2R) about x = 200. Eye 1.08 m, object 0.6 m: sight over it √(2R·1.08) + √(2R·0.6), as the crest
    // formula of every design manual (100 A L² …) gives for a curve longer than the sight.
    const radius = 2000;
    const { ground, line, bench } = straight((x) => 100 - (x - 200) ** 2 / (2 * radius));
    const exact = Math.sqrt(2 * radius * 1.08) + Math.sqrt(2 * radius * 0.6);
    const { after, before } = sightAlong(ground, line, bench, 170);
    expect(after.ends).toBe('blocked');
    expect(Math.abs(after.distanceM - exact)).toBeLessThan(2);
    expect(Math.abs(before.distanceM - exact)).toBeLessThan(2);
  });

  it('ends where the inside of a bend hides it: middle ordinate of the chord', () => {
    // Radius 60 m, a wall of earth from 5 m inside the middle of the road: S = 2R acos(1 − 5/R), about 49.4 m.
    const radius = 60;
    const points: number[] = [];
    for (let a = 0; a <= 150; a += 2) {
      const t = (a * Math.PI) / 180;
      points.push(radius * Math.cos(t), radius * Math.sin(t));
    }
    const drawn = Float64Array.from(points);
    const ground = groundFrom((x, y) => (Math.hypot(x, y) < radius - 5 ? 105 : 100), {
      west: -110,
      south: -50,
      east: 110,
      north: 110,
    });
    const line: StationedLine = stationedLine(drawn);
    const bench = findBench(roadInput({ ground, drawn }), 0, 150);
    // Cells of 1 m smear the wall by up to a metre toward the road.
    const [near, far] = [4, 5].map((m) => 2 * radius * Math.acos(1 - m / radius));
    const { before, after } = sightAlong(ground, line, { ...bench, shiftM: new Float64Array(bench.count) }, 78);
    for (const sight of [before, after]) {
      expect(sight.ends).toBe('blocked');
      expect(sight.distanceM).toBeGreaterThan(near - 2);
      expect(sight.distanceM).toBeLessThan(far + 1);
    }
  });

  it('stops at missing ground', () => {
    const { ground, line, bench } = straight((x) => (x > 250 && x < 260 ? Number.NaN : 100));
    // The cell before the gap has no height any more: a bilinear height needs all four.
    const { after } = sightAlong(ground, line, bench, 200);
    expect(after).toEqual({ distanceM: 49, ends: 'no data' });
  });
});
