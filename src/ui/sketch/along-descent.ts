import type { LonLat } from '../../geo/index.ts';
import type { Study } from '../../study/index.ts';

/** A mouse nearer to the descent than this means a station of it, metres. */
const NEAR_M = 12;
const METRES_PER_DEGREE = 111_320;

/** Metres from the edge of the descent's station beside a position; null where the position is not near the descent. */
export function distanceAlong({ edge, descent }: Study, at: LonLat): number | null {
  if (!edge || !descent || descent.horizontalM === 0) return null;
  const { x, y } = metres(edge, at);
  const end = metres(edge, descent.end);
  const length = Math.hypot(end.x, end.y);
  if (length === 0) return null;
  const along = (x * end.x + y * end.y) / length;
  const aside = Math.abs(x * end.y - y * end.x) / length;
  return aside > NEAR_M || along < 0 || along > length ? null : (along / length) * descent.horizontalM;
}

/** The position of a station of the descent. */
export function positionAlong({ edge, descent }: Study, distanceM: number): LonLat | null {
  if (!edge || !descent || descent.horizontalM === 0) return null;
  const t = distanceM / descent.horizontalM;
  return { lon: edge.lon + t * (descent.end.lon - edge.lon), lat: edge.lat + t * (descent.end.lat - edge.lat) };
}

function metres(from: LonLat, to: LonLat): { x: number; y: number } {
  const perLon = METRES_PER_DEGREE * Math.cos((from.lat * Math.PI) / 180);
  return { x: (to.lon - from.lon) * perLon, y: (to.lat - from.lat) * METRES_PER_DEGREE };
}
