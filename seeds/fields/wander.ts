import { seededRandom } from '../../src/units/index.ts';

/** Smooth seeded chance along a road, mean 0, rms about 1, wave length about four times `scaleM`. */
export function wander(count: number, scaleM: number, from: number): Float32Array {
  const random = seededRandom(from);
  const knots = Float32Array.from({ length: Math.ceil(count / scaleM) + 4 }, () => random.normal() * 1.4);
  return Float32Array.from({ length: count }, (_, i) => {
    const at = i / scaleM;
    const k = Math.floor(at);
    const t = at - k;
    const u = 1 - t;
    const w = [u * u * u, 3 * t * t * t - 6 * t * t + 4, 3 * u * u * u - 6 * u * u + 4, t * t * t];
    return (w[0] * knots[k] + w[1] * knots[k + 1] + w[2] * knots[k + 2] + w[3] * knots[k + 3]) / 6;
  });
}
