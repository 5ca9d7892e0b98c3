import type { LonLat } from '../../geo/index.ts';
import type { Area } from '../schema/index.ts';

type Corner = readonly [lon: number, lat: number];

/**
 * True where a path of positions (one or more, WGS 84 degrees) lies in an area or touches it; its border belongs to it. Even-odd
 * rule in degrees; areas do not cross the 180th meridian.
 */
export function touchesArea(path: readonly LonLat[], area: Area): boolean {
  const areas = area.type === 'Polygon' ? [area.coordinates] : area.coordinates;
  const corners = path.map(({ lon, lat }): Corner => [lon, lat]);
  return areas.some(
    (rings) =>
      corners.some((corner) => inside(corner, rings)) ||
      corners.some((corner, i) => i > 0 && rings.some((ring) => crossesRing(corners[i - 1]!, corner, ring))),
  );
}

function inside([x, y]: Corner, rings: readonly (readonly Corner[])[]): boolean {
  let odd = false;
  for (const ring of rings) {
    for (let i = 1; i < ring.length; i++) {
      const [ax, ay] = ring[i - 1]!;
      const [bx, by] = ring[i]!;
      const side = (bx - ax) * (y - ay) - (by - ay) * (x - ax);
      if (side === 0 && (x - ax) * (x - bx) <= 0 && (y - ay) * (y - by) <= 0) return true;
      if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) odd = !odd;
    }
  }
  return odd;
}

function crossesRing(p: Corner, q: Corner, ring: readonly Corner[]): boolean {
  for (let i = 1; i < ring.length; i++) {
    const [a, b] = [ring[i - 1]!, ring[i]!];
    if (turn(p, q, a) * turn(p, q, b) < 0 && turn(a, b, p) * turn(a, b, q) < 0) return true;
  }
  return false;
}

const turn = (a: Corner, b: Corner, c: Corner): number => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
