import type { Study } from '../../study/index.ts';

/** The profile at a distance from the edge: metres, metres below the edge, degrees; null where there is no profile. */
export function profileAt({ profile, edge }: Study, distanceM: number) {
  if (!profile || !edge || profile.distanceM.length < 2) return null;
  const { distanceM: at, elevationM, angleDeg } = profile;
  let i = 0;
  while (i < at.length - 2 && at[i + 1]! < distanceM) i++;
  const t = Math.min(1, Math.max(0, (distanceM - at[i]!) / (at[i + 1]! - at[i]! || 1)));
  const elevation = elevationM[i]! + t * (elevationM[i + 1]! - elevationM[i]!);
  const angle = angleDeg[t < 0.5 ? i : i + 1] ?? angleDeg[i] ?? 0;
  return { distanceM, elevationM: elevation, downM: edge.elevationM - elevation, angleDeg: angle };
}
