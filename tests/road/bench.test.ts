import { describe, expect, it } from 'vitest';
import { benchAt, edgeKindAt, findBench, type Obstacle, UNDER } from '../../src/road/index.ts';
import { groundFrom } from '../helpers/ground-from.ts';
import { roadInput } from '../helpers/road-bench.ts';
import { groundOf } from '../helpers/road-raster.ts';

const box = { west: -10, south: -70, east: 310, north: 70 };
const drawn = Float64Array.of(0, 0, 300, 0);

/** A road due east, level along, 3 m to the left and 4 m to the right of y = 0; q is positive to the right (south). */
const bench = (height: (q: number, x: number) => number, more: Parameters<typeof roadInput>[1] = {}, line = drawn) =>
  findBench(roadInput({ ground: groundFrom((x, y) => height(-y, x), box), drawn: line }, more), 60, 240);

const hillside = (q: number): number => {
  if (q < -3) return 100 + 1.2 * Math.min(-q - 3, 6) + 0.4 * Math.max(0, -q - 9);
  return q > 4 ? 100 - 0.7 * (q - 4) : 100;
};

describe('a plain hillside road', () => {
  const b = bench(hillside);
  const at = benchAt(b, 150);

  it('has its toe on the left and its edge on the right', () => {
    expect([at.left.kind, at.right.kind]).toEqual(['rise', 'drop']);
    expect(at.left.edgeOffsetM).toBeCloseTo(-3, 1);
    expect(at.right.edgeOffsetM).toBeCloseTo(4, 1);
    expect(at.widthM).toBeCloseTo(7, 1);
    expect(at.right.sigmaM).toBeLessThan(0.1);
  });

  it('usable is the edge less 1 m and the toe less 0.5 m', () => {
    expect(at.right.usableOffsetM! - at.right.edgeOffsetM!).toBeCloseTo(-1, 6);
    expect(at.left.usableOffsetM! - at.left.edgeOffsetM!).toBeCloseTo(0.5, 6);
  });

  it('gives stations at whole metres, the edge point on the plane, the slope above', () => {
    expect(b.firstStationM).toBe(60);
    expect(b.count).toBe(181);
    const i = 90;
    expect(b.right.edgeX[i]).toBeCloseTo(150, 6);
    expect(b.right.edgeY[i]).toBeCloseTo(-b.right.edgeOffsetM[i], 6);
    expect(b.right.edgeHeightM[i]).toBeCloseTo(100, 1);
    // 1.2 is 50.2°; it is that steep for 7.2 m and then 0.4 (21.8°) as far as the section sees.
    expect(b.left.above[i]!.angleDeg).toBeGreaterThan(48);
    expect(b.left.above[i]!.angleDeg).toBeLessThan(50.3);
    expect(b.left.above[i]!.heightM).toBeGreaterThan(15);
    expect(b.notes.map(({ code }) => code)).toEqual(['slope-above']);
  });

  it('is the same whichever way it is drawn, sides swapped', () => {
    const back = bench(hillside, {}, Float64Array.of(300, 0, 0, 0));
    const there = benchAt(back, 150);
    expect([there.left.kind, there.right.kind]).toEqual(['drop', 'rise']);
    expect(there.left.edgeOffsetM).toBeCloseTo(-at.right.edgeOffsetM!, 2);
    expect(there.right.edgeOffsetM).toBeCloseTo(-at.left.edgeOffsetM!, 2);
  });

  it('does not depend on where the stretch begins', () => {
    const part = findBench(roadInput({ ground: groundFrom((_, y) => hillside(-y), box), drawn }), 120, 180);
    expect(part.firstStationM).toBe(120);
    expect(part.right.edgeOffsetM[30]).toBeCloseTo(b.right.edgeOffsetM[90], 3);
  });
});

describe('grade and crossfall', () => {
  it('climb along the drawing and fall to the right are positive', () => {
    const b = bench((q, x) => hillside(q) + 0.08 * x - (Math.abs(q) < 5 ? 0.03 * q : 0.03 * 5 * Math.sign(q)));
    const at = benchAt(b, 150);
    expect(at.gradeDeg).toBeCloseTo((Math.atan(0.08) * 180) / Math.PI, 1);
    expect(at.crossfallDeg).toBeCloseTo((Math.atan(0.03) * 180) / Math.PI, 0);
    expect(at.right.kind).toBe('drop');
  });

  it('a track that climbs 14 % is a bench: only slope across counts', () => {
    expect(
      benchAt(
        bench((q, x) => hillside(q) + 0.14 * x),
        150,
      ).right.edgeOffsetM,
    ).toBeCloseTo(4, 1);
  });
});

describe('a line drawn off its road', () => {
  it.each([-12, -8, -3, 8, 10])('%i m: offsets stay those from the line as drawn', (off) => {
    // Drawn `off` metres to the right of the road's middle line y = 0.
    const b = bench(hillside, {}, Float64Array.of(0, -off, 300, -off));
    const at = benchAt(b, 150);
    expect(at.right.edgeOffsetM).toBeCloseTo(4 - off, 1);
    expect(at.left.edgeOffsetM).toBeCloseTo(-3 - off, 1);
    expect(Math.abs(at.lineShiftM - (0.5 - off))).toBeLessThan(1.2);
    expect(b.notes.some(({ code }) => code === 'line-shift')).toBe(Math.abs(off) >= 8);
  });

  it('askew by 6°: the edge still lies on the edge', () => {
    const b = bench(hillside, {}, Float64Array.of(0, 12, 240, -13));
    for (let i = 0; i < b.count; i++) {
      if (b.x[i] < 40 || b.x[i] > 200) continue;
      expect(Math.abs(b.right.edgeY[i] + 4)).toBeLessThan(0.15);
    }
  });
});

describe('what is no drop', () => {
  it.each([
    ['level ground', () => 100],
    ['a field that falls by 8 %', (q: number) => 100 - 0.08 * q],
    ['a cut on both sides', (q: number) => 100 + Math.max(0, Math.abs(q) - 4)],
  ])('%s', (_, height) => {
    const b = bench(height);
    for (const side of [b.left, b.right]) expect([...side.kind].some((k) => k === 1)).toBe(false);
  });

  it('level ground has no edge, and is usable as far as it was seen to be level', () => {
    const at = benchAt(
      bench(() => 100),
      150,
    );
    expect(at.right).toMatchObject({ kind: 'none', edgeOffsetM: null, sigmaM: null });
    expect(at.right.usableOffsetM).toBeCloseTo(9.5, 0);
    expect(at.widthM).toBeNull();
  });

  it('a bank of 0.9 m is told as a bank with its fall', () => {
    const b = bench((q) => (q > 4 ? 100 - Math.min(0.9, 0.3 * (q - 4)) : 100));
    expect(edgeKindAt(b.right, 90)).toBe('bank');
    expect(b.right.fallM[90]).toBeCloseTo(0.9, 1);
    expect(b.notes.find(({ code }) => code === 'bank')).toMatchObject({ side: 1 });
  });

  it('a drop needs about ten stations', () => {
    const b = bench((q, x) => (q > 4 && Math.abs(x - 150) < 3 ? 100 - 0.7 * (q - 4) : 100));
    expect([...b.right.kind].some((k) => k === 1)).toBe(false);
    const longer = bench((q, x) => (q > 4 && Math.abs(x - 150) < 12 ? 100 - 0.7 * (q - 4) : 100));
    expect(edgeKindAt(longer.right, 90)).toBe('drop');
  });

  it.each([
    [0.27, 2.2, 'drop'],
    [0.45, 1.3, 'drop'],
    [0.35, 1.5, 'bank'],
    [0.22, 5, 'bank'],
  ])('slope %f falling %f m is a %s: 25 %% and 2 m, or 40 %% and 1.2 m', (slope, fall, kind) => {
    const b = bench((q) => (q > 4 ? 100 - Math.min(fall, slope * (q - 4)) : 100));
    expect(edgeKindAt(b.right, 90)).toBe(kind);
  });
});

describe('ditches, berms, shoulders', () => {
  const cut = (q: number, start: number): number => (q > start ? 100 + (q - start) : 100);

  it('a wide ditch before a cut: the toe is the end, the lip is as far as one may stand', () => {
    const ditch = (q: number): number => (q > 3 && q < 7 ? -0.7 * Math.sin(((q - 3) * Math.PI) / 4) : 0);
    const b = bench((q) => cut(q, 7) + ditch(q));
    const at = benchAt(b, 150);
    expect(at.right.kind).toBe('rise');
    expect(at.right.usableOffsetM).toBeGreaterThan(2.4);
    expect(at.right.usableOffsetM).toBeLessThan(3.6);
    expect(b.notes.some(({ code, side }) => code === 'ditch' && side === 1)).toBe(true);
  });

  it('a narrow ditch is crossed', () => {
    const ditch = (q: number): number => (q > 3 && q < 4.5 ? -0.4 : 0);
    expect(
      benchAt(
        bench((q) => cut(q, 5) + ditch(q)),
        150,
      ).right.edgeOffsetM,
    ).toBeCloseTo(5, 0);
  });

  it('a berm of 0.4 m is crossed', () => {
    const berm = (q: number): number => (q > 2.5 && q < 4 ? 0.4 * Math.sin(((q - 2.5) * Math.PI) / 1.5) : 0);
    expect(
      Math.abs(
        benchAt(
          bench((q) => hillside(q) + berm(q)),
          150,
        ).right.edgeOffsetM! - 4,
      ),
    ).toBeLessThan(0.25);
  });

  const bank = (height: number) => (q: number) =>
    (q > 8 ? 100 - 0.7 * (q - 8) : 100) + (q > 4 && q < 8 ? height * Math.sin(((q - 4) * Math.PI) / 4) : 0);

  it('a bank of 1 m with a drop behind it is part of the edge: stand before it', () => {
    const b = bench(bank(1));
    const { kind, edgeOffsetM, usableOffsetM, sigmaM } = benchAt(b, 150).right;
    expect(kind).toBe('drop');
    expect(Math.abs(edgeOffsetM! - 8)).toBeLessThan(0.9);
    expect(usableOffsetM).toBeLessThanOrEqual(4);
    expect(sigmaM).toBeGreaterThan(0.3);
    expect(b.notes.find(({ code }) => code === 'bank-at-edge')!.values[0]).toBeCloseTo(0.9, 0);
  });

  it('a higher bank is a rise that says what lies behind it', () => {
    const b = bench(bank(2));
    expect(edgeKindAt(b.right, 90)).toBe('rise');
    expect(b.notes.find(({ code }) => code === 'drop-behind-bank')!.values[0]).toBeGreaterThan(5);
  });

  it('a soft shoulder: both ends are told, the usable one counts from the outer', () => {
    const b = bench((q) => (q > 6.5 ? 100 - 0.45 - 0.7 * (q - 6.5) : q > 4 ? 100 - 0.18 * (q - 4) : 100));
    const { firmOffsetM, edgeOffsetM, kind } = benchAt(b, 150).right;
    expect(kind).toBe('drop');
    expect(Math.abs(edgeOffsetM! - 6.5)).toBeLessThan(0.5);
    expect(Math.abs(firmOffsetM! - 4)).toBeLessThan(0.7);
    expect(b.notes.some(({ code }) => code === 'soft-shoulder')).toBe(true);
  });

  it('a sharp edge is firm to its end', () => {
    const { firmOffsetM, edgeOffsetM } = benchAt(bench(hillside), 150).right;
    expect(firmOffsetM).toBe(edgeOffsetM);
  });
});

describe('barriers and walls', () => {
  const line = (q: number) => Float64Array.of(-20, -q, 320, -q);
  const right = (obstacles: Obstacle[]) => benchAt(bench(hillside, { obstacles }), 150).right.usableOffsetM!;

  it('a barrier inside the edge takes its face less 0.5 m', () => {
    expect(right([{ kind: 'barrier', line: line(2.6), mapped: false }])).toBeCloseTo(2.1, 1);
  });

  it('a barrier beyond the usable edge changes nothing, nor does one on the other side', () => {
    const free = right([]);
    expect(right([{ kind: 'barrier', line: line(4.2), mapped: false }])).toBeCloseTo(free, 9);
    expect(right([{ kind: 'barrier', line: line(-2), mapped: false }])).toBeCloseTo(free, 9);
  });

  it('a wall at the edge counts like an edge', () => {
    expect(right([{ kind: 'wall', line: line(3.5), mapped: false }])).toBeCloseTo(2.5, 1);
  });

  it('a mapped rail keeps its side and the shorter distance where the road line is off', () => {
    // Line and rail both drawn 6 m to the left: the rail would stand on the road's far side.
    const b = bench(
      hillside,
      { obstacles: [{ kind: 'barrier', line: line(-3), mapped: true }] },
      Float64Array.of(0, 6, 300, 6),
    );
    const at = benchAt(b, 150);
    expect(at.right.usableOffsetM! - at.lineShiftM).toBeLessThanOrEqual(2.6);
  });
});

describe('structures', () => {
  it('a tagged bridge is a structure, station by station', () => {
    const b = bench(hillside, { structures: [{ fromM: 140, toM: 160 }] });
    expect(b.under[90]).toBe(UNDER.structure);
    expect(benchAt(b, 150)).toMatchObject({ structure: true, widthM: null });
    expect(benchAt(b, 130).right.kind).toBe('drop');
    expect(b.notes.find(({ code }) => code === 'structure')).toMatchObject({ fromM: 140, toM: 160 });
  });

  it('an untagged gap in the profile is one too', () => {
    const b = bench((q, x) => (Math.abs(x - 150) < 12 ? 94 : hillside(q)));
    expect(benchAt(b, 150).structure).toBe(true);
    expect(benchAt(b, 120)).toMatchObject({ structure: false, right: { kind: 'drop' } });
  });

  it('a dip of the road with gentle ends is none', () => {
    const b = bench((q, x) => hillside(q) - 3 * Math.exp(-(((x - 150) / 25) ** 2)));
    expect(b.notes.some(({ code }) => code === 'structure')).toBe(false);
    expect(benchAt(b, 150).right.edgeOffsetM).toBeCloseTo(4, 1);
  });

  it.each([0, 0.5])('a culvert trench of four stations is bridged, askew by %f', (skew) => {
    const b = bench((q, x) => (Math.abs(x - 150 - skew * q) <= 2 ? Math.min(hillside(q), 97.5) : hillside(q)));
    const at = benchAt(b, 150);
    expect(at.structure).toBe(false);
    expect(at.right.kind).toBe('drop');
    expect(at.right.edgeOffsetM).toBeCloseTo(4, 0);
    expect(b.notes.some(({ code }) => code === 'culvert')).toBe(true);
  });
});

describe('two sides, two benches, two carriageways', () => {
  it('a dam drops on both sides', () => {
    const b = bench((q) => 100 - 0.6 * Math.max(0, Math.abs(q) - 4));
    expect(b.notes.some(({ code }) => code === 'through-fill')).toBe(true);
    expect(benchAt(b, 150)).toMatchObject({ left: { kind: 'drop' }, right: { kind: 'drop' } });
  });

  it('a level strip 13 m beside the road is warned of', () => {
    const b = bench((q) => {
      if (q < 9 || q > 17) return hillside(q) - (q > 17 ? -0.7 * 8 : 0);
      return hillside(9);
    });
    expect(b.notes.some(({ code, values }) => code === 'two-benches' && values[1] < -2)).toBe(true);
  });

  it('on a median only a drop of 2 m counts', () => {
    const median = (fall: number) => (q: number) => 100 - Math.min(fall, 0.8 * Math.max(0, q - 4));
    const medians = [{ fromM: 0, toM: 300, side: 1 as const }];
    expect(edgeKindAt(bench(median(1.6)).right, 90)).toBe('drop');
    expect(edgeKindAt(bench(median(1.6), { medians }).right, 90)).toBe('bank');
    expect(edgeKindAt(bench(median(2.4), { medians }).right, 90)).toBe('drop');
  });

  it('another road cuts the sections half-way to it', () => {
    const rest = Float64Array.from({ length: 300 }, (_, k) => (k % 2 === 0 ? k : -24));
    const b = bench((q) => (q > 20 ? 80 : hillside(q)), { rest });
    expect(benchAt(b, 150).right.edgeOffsetM).toBeCloseTo(4, 1);
  });
});

it('a track that leaves makes the edge jump, and the inner one counts beside it', () => {
  // To the right a level track leaves between x = 130 and 150, widening a metre a metre, and ends at once.
  const b = bench((q, x) => {
    const width = x > 130 && x < 138 ? 4 + (x - 130) : 4;
    return q > width ? 100 - 0.7 * (q - width) : q < -3 ? hillside(q) : 100;
  });
  const jump = b.notes.find(({ code }) => code === 'track-leaves');
  expect(jump).toBeDefined();
  const i = Math.round(jump!.toM) - b.firstStationM;
  expect(b.right.usableOffsetM[i]).toBeLessThan(4);
  expect(b.right.usableOffsetM[i - 1]).toBeLessThan(4);
});

describe('coarse and missing ground', () => {
  const fall = (slope: number) => (q: number) => 100 - slope * q;
  const coarse = (height: (q: number) => number) =>
    findBench(roadInput({ ground: groundFrom((_, y) => height(-y), box, 10), drawn }), 60, 240);

  it('cells of 10 m: half the width, one sigma a cell, told as assumed', () => {
    const b = coarse((q) => 100 - 0.6 * q);
    expect(b.how).toBe('assumed');
    expect(b.rule).toBe('half of 2 lanes of 3 m');
    expect(benchAt(b, 150)).toMatchObject({
      widthM: 6,
      crossfallDeg: null,
      right: { kind: 'drop', edgeOffsetM: 3, sigmaM: 10, usableOffsetM: 2 },
      left: { kind: 'rise', edgeOffsetM: -3, usableOffsetM: -2 },
    });
  });

  it('coarse cells hide banks: what falls by 10 % may be one, level ground is none', () => {
    const falling = benchAt(coarse(fall(0.12)), 150);
    expect([falling.left.kind, falling.right.kind]).toEqual(['rise', 'drop']);
    expect(benchAt(coarse(fall(0.06)), 150).right.kind).toBe('none');
  });

  it('ground that ends makes nothing better', () => {
    const b = bench((q, x) => (x > 200 || q > 12 ? Number.NaN : hillside(q)));
    expect(benchAt(b, 150).right).toMatchObject({ kind: 'drop' });
    expect(benchAt(b, 230)).toMatchObject({ widthM: null, right: { kind: 'none', edgeOffsetM: null } });
    expect(b.notes.some(({ code }) => code === 'no-ground')).toBe(true);
  });

  it.each([2, 5, 30])('a road of %i m is measured as far as it goes', (length) => {
    const input = roadInput({
      ground: groundFrom((_, y) => hillside(-y), box),
      drawn: Float64Array.of(0, 0, length, 0),
    });
    const b = findBench(input, -100, 100);
    expect([b.firstStationM, b.count]).toEqual([0, length + 1]);
  });
});

it('rasters turned against the road, with cells wider than high, give the same edges', () => {
  // As a geographic raster lies on a local plane: its columns are shorter on the ground than its rows, its axes turned.
  const [cos, sin] = [Math.cos(0.4), Math.sin(0.4)];
  const [stepX, stepY] = [0.8, 1.1];
  const size = 460;
  const data = new Float64Array(size * size);
  for (let row = 0; row < size; row++) {
    for (let col = 0; col < size; col++) {
      const [u, v] = [(col - size / 2) * stepX, (size / 2 - row) * stepY];
      data[row * size + col] = hillside(-(u * sin + v * cos));
    }
  }
  const grid = { width: size, height: size, data, x0: 0, y0: 0, stepX, stepY };
  const { plane, layers } = groundOf(grid, 0.05);
  // The road's middle (150, 0) lies on the raster's middle.
  const fit = Float64Array.of(
    size / 2 - (150 * cos) / stepX,
    cos / stepX,
    sin / stepX,
    0,
    size / 2 - (150 * sin) / stepY,
    sin / stepY,
    -cos / stepY,
    ...[0, 0, 0, 0, 0],
  );
  const ground = { plane, layers: [{ info: layers[0].info, grid, fit }] };
  const at = benchAt(findBench(roadInput({ ground, drawn }), 60, 240), 150);
  expect(at.right.edgeOffsetM).toBeCloseTo(4, 1);
  expect(at.left.edgeOffsetM).toBeCloseTo(-3, 1);
});
