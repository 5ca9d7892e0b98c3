import { type Random, seededRandom } from '../../src/units/index.ts';
import type { Along, RoadSpec, SideShape } from './road-ground.ts';

const constant =
  (value: number): Along =>
  () =>
    value;

/** A smooth random function of the distance: a sum of sines between `from` and `to` with waves of `longM` and longer. */
export function wander(random: Random, from: number, to: number, longM: number): Along {
  const parts = [1, 1.7, 2.9].map((f) => ({ k: (2 * Math.PI) / (longM * f), p: random.next() * 7 }));
  return (s) => {
    let sum = 0;
    for (const { k, p } of parts) sum += Math.sin(k * s + p);
    return from + (to - from) * Math.min(1, Math.max(0, 0.5 + sum / 4.4));
  };
}

const between = (random: Random, a: number, b: number): number => a + (b - a) * random.next();
const tan = (deg: number): number => Math.tan((deg * Math.PI) / 180);

/** Gentle bends of 40 m radius and more. */
function bends(random: Random): Along {
  const w = wander(random, -1, 1, 60);
  const most = between(random, 0, 1 / 40);
  return (s) => most * w(s);
}

/** A plain hillside road: cut on the left, fill on the right, even slopes, small roughness. */
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
  return {
    seed,
    lengthM: 300,
    curvature: bends(random),
    grade: constant(between(random, -0.09, 0.09)),
    crossfall: constant(between(random, -0.04, 0.04)),
    left,
    right,
    roughM: constant(between(random, 0.02, 0.05)),
    noiseM: 0.05,
    noiseLengthM: between(random, 1, 2),
    drawnOff: (s) => off + wobble(s),
    cellM: 1,
  };
}

/** A rough road: everything varies, rounding, berms, gullied slopes, the line up to 8 m off. */
export function roughRoad(seed: number): RoadSpec {
  const random = seededRandom(seed);
  const plain = plainRoad(seed + 1);
  const steep = wander(random, tan(22), tan(45), 40);
  const off = between(random, -7, 7);
  const wobble = wander(random, -1, 1, 50);
  const berm = random.next() < 0.4;
  const bermHeight = wander(random, 0.2, 0.5, 40);
  return {
    ...plain,
    right: {
      ...plain.right,
      width: wander(random, 2.6, 6.5, 30),
      slope: steep,
      rounding: wander(random, 0.3, 2, 40),
      ...(berm ? { berm: { heightM: bermHeight, widthM: 2, insideM: 1.3 } } : {}),
    },
    left: { ...plain.left, width: wander(random, 2.4, 4.5, 30), rounding: wander(random, 0, 1, 50) },
    roughM: wander(random, 0.05, 0.2, 60),
    noiseM: between(random, 0.05, 0.1),
    drawnOff: (s) => off + wobble(s),
  };
}
