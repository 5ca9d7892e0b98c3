import type { Profile } from './profile.ts';

/** Length along the ground of a profile, metres, its heights as they are. */
export function groundLength({ distanceM, elevationM }: Profile): number {
  return lengthAlong(distanceM, elevationM);
}

/** Length along the ground of a profile whose heights are first averaged over 3 m, metres: what rope lengths are taken from. */
export function smoothedGroundLength({ distanceM, elevationM, stepM }: Profile): number {
  const reach = Math.max(1, Math.round(1.5 / stepM));
  const n = elevationM.length;
  const smooth = Float64Array.from(elevationM, (_, i) => {
    const half = Math.min(reach, i, n - 1 - i);
    let sum = 0;
    for (let j = i - half; j <= i + half; j++) sum += elevationM[j];
    return sum / (2 * half + 1);
  });
  return lengthAlong(distanceM, smooth);
}

function lengthAlong(distanceM: Float64Array, elevationM: Float64Array): number {
  let sum = 0;
  for (let i = 1; i < distanceM.length; i++) {
    sum += Math.hypot(distanceM[i] - distanceM[i - 1], elevationM[i] - elevationM[i - 1]);
  }
  return sum;
}
