import { toRadians } from '../units/index.ts';

/** Shares of a weight that hang on the rope and press on the ground, without friction; they do not add to one. */
export interface WeightShares {
  readonly ropePull: number;
  readonly groundPress: number;
}

/** sin θ and cos θ of a slope (statics); equal at 45°. */
export function weightShares(angleDeg: number): WeightShares {
  const theta = toRadians(angleDeg);
  return { ropePull: Math.sin(theta), groundPress: Math.cos(theta) };
}
