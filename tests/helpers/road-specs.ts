import { type Random, seededRandom } from '../../src/units/index.ts';
import type { Along, RoadSpec, SideShape } from './road-ground.ts';

export const constant =
  (value: number): Along =>
  () =>
    value;
export const between = (random: Random, a: number, b: number): number => a + (b - a) * random.next();
export const tan = (deg: number): number => Math.tan((deg * Math.PI) / 180);

/** A smooth random function of the distance between `from` and `to`: a sum of sines of `longM` and longer. */
export function wander(random: Random, from: number, to: number, longM: number): Along {
  const parts = [1, 1.7, 2.9].map((f) => ({ k: (2 * Math.PI) / (longM * f), p: random.next() * 7 }));
  return (s) => {
    let sum = 0;
    for (const { k, p } of parts) sum += Math.sin(k * s + p);
    return from + (to - from) * Math.min(1, Math.max(0, 0.5 + sum / 4.4));
  };
}

/** Rises from 0 to 1 over `overM` from `atM`, straight. */
export const ramp =
  (atM: number, overM: number): Along =>
  (s) =>
    Math.min(1, Math.max(0, (s - atM) / overM));

/** A plain hillside road: cut on the left, fill on the right, even slopes, small roughness, gentle bends. */
export function plainRoad(seed: number): RoadSpec {
  const random = seededRandom(seed);
  const left: SideShape = {
    width: wander(random, 2.8, 4.5, 80),
    turn: constant(1),
    slope: constant(tan(between(random, 35, 55))),
    runM: constant(between(random, 4, 15)),
    natural: constant(tan(between(random, 15, 35))),
  };
  const right: SideShape = {
    width: wander(random, 2.8, 4.5, 80),
    turn: constant(-1),
    slope: constant(tan(between(random, 24, 42))),
    runM: constant(between(random, 8, 30)),
    natural: constant(tan(between(random, 15, 35))),
  };
  const off = between(random, -1.5, 1.5);
  const wobble = wander(random, -1, 1, 60);
  const bend = between(random, 0, 1 / 40);
  const bends = wander(random, -1, 1, 60);
  return {
    seed,
    lengthM: 300,
    curvature: (s) => bend * bends(s),
    grade: constant(between(random, -0.09, 0.09)),
    crossfall: constant(between(random, -0.04, 0.04)),
    left,
    right,
    roughM: constant(between(random, 0.02, 0.05)),
    noiseM: between(random, 0.04, 0.07),
    noiseLengthM: between(random, 1, 2),
    drawnOff: (s) => off + wobble(s),
    cellM: 1,
  };
}

/** A rough road: everything varies, rounding, berms, gullied slopes, the line up to 8 m off. */
export function roughRoad(seed: number): RoadSpec {
  const random = seededRandom(seed);
  const plain = plainRoad(seed + 1);
  const off = between(random, -7, 7);
  const wobble = wander(random, -1, 1, 50);
  const berm = { heightM: wander(random, 0.2, 0.5, 40), widthM: 2, insideM: 1.3 };
  return {
    ...plain,
    right: {
      ...plain.right,
      width: wander(random, 2.6, 6.5, 30),
      slope: wander(random, tan(22), tan(45), 40),
      rounding: wander(random, 0.3, 2, 40),
      ...(random.next() < 0.4 ? { berm } : {}),
    },
    left: { ...plain.left, width: wander(random, 2.4, 4.5, 30), rounding: wander(random, 0, 1, 50) },
    roughM: wander(random, 0.05, 0.2, 60),
    noiseM: between(random, 0.05, 0.1),
    drawnOff: (s) => off + wobble(s),
  };
}

/** A plain road whose fill side carries a low ridge of earth. */
export function bermRoad(seed: number): RoadSpec {
  const plain = plainRoad(seed);
  const random = seededRandom(seed + 5);
  const berm = {
    heightM: wander(random, 0.25, 0.55, 50),
    widthM: between(random, 1.6, 2.4),
    insideM: between(random, 1, 1.4),
  };
  return { ...plain, right: { ...plain.right, berm } };
}

/** A plain road with a turnout up to 16 m deep, tapers of 10 to 20 m. */
export function turnoutRoad(seed: number): RoadSpec {
  const plain = plainRoad(seed);
  const random = seededRandom(seed + 7);
  const depth = between(random, 4, 12);
  const taper = between(random, 12, 20);
  const width: Along = (s) => 3.5 + depth * (ramp(100, taper)(s) - ramp(180 - taper, taper)(s));
  return { ...plain, curvature: constant(0), right: { ...plain.right, width } };
}

/** A plain road with rounding of up to 3 m on its fill side. */
export function roundedRoad(seed: number): RoadSpec {
  const plain = plainRoad(seed);
  const random = seededRandom(seed + 8);
  return { ...plain, right: { ...plain.right, rounding: wander(random, 1, 3, 80) } };
}

/** A road in a cut on both sides. */
export function cutRoad(seed: number): RoadSpec {
  const plain = plainRoad(seed);
  return { ...plain, right: { ...plain.left, width: plain.right.width } };
}

/** A road on level ground: rolling by 0.3 m, or a field that falls by 8 %. */
export function flatRoad(seed: number): RoadSpec {
  const plain = plainRoad(seed);
  const random = seededRandom(seed + 9);
  const field = random.next() < 0.5 ? 0.08 : 0;
  const level: SideShape = { ...plain.left, turn: constant(0), runM: constant(0) };
  return {
    ...plain,
    crossfall: constant(field),
    left: level,
    right: level,
    roughM: constant(between(random, 0.05, 0.15)),
  };
}

/** A road on a dam: falls on both sides. */
export function throughFill(seed: number): RoadSpec {
  const plain = plainRoad(seed);
  return { ...plain, left: { ...plain.right, width: plain.left.width } };
}

/** A plain road with a second bench, level and hard, 14 to 18 m below in plan. */
export function secondBenchRoad(seed: number): RoadSpec {
  const plain = plainRoad(seed);
  const random = seededRandom(seed + 10);
  const secondBench = { atM: between(random, 7, 10), widthM: between(random, 6, 8) };
  const off = between(random, -8, 6);
  return { ...plain, drawnOff: constant(off), right: { ...plain.right, secondBench } };
}

/** A hairpin of 12 to 15 m radius that climbs to the left into a plane hillside. */
export function hairpinRoad(seed: number): RoadSpec {
  const plain = plainRoad(seed);
  const random = seededRandom(seed + 11);
  const radius = between(random, 12, 15);
  const width = between(random, 3.2, 4.2);
  const arc = Math.PI * radius;
  const grade = between(random, 0.06, 0.09);
  const off = between(random, -3, 3);
  const ease = 6;
  const curvature: Along = (s) => (ramp(110, ease)(s) - ramp(110 + arc, ease)(s)) / radius;
  const side: SideShape = { ...plain.right, width: constant(width) };
  return {
    ...plain,
    lengthM: 220 + arc,
    curvature,
    grade: constant(grade),
    left: side,
    right: side,
    drawnOff: constant(off),
    hillside: { acrossSlope: between(random, 0.35, 0.55), alongSlope: grade, cut: tan(50), fill: tan(36) },
  };
}
