import type { MarkKind } from '../../book/index.ts';
import type { LonLat } from '../../geo/index.ts';

export type MarkShape = 'point' | 'line' | 'area';

const lines: readonly MarkKind[] = ['barrier', 'wall', 'wire'];
const areas: readonly MarkKind[] = ['firm ground', 'soft ground', 'water'];

/** How a kind of mark is drawn: one tap, a line or an area. */
export const markShape = (kind: MarkKind): MarkShape =>
  lines.includes(kind) ? 'line' : areas.includes(kind) ? 'area' : 'point';

/** Corners that a shape takes at least. */
export const leastCorners = { point: 1, line: 2, area: 3 } as const;

type Corner = [number, number];
export type MarkGeometry =
  | { type: 'Point'; coordinates: Corner }
  | { type: 'LineString'; coordinates: Corner[] }
  | { type: 'Polygon'; coordinates: Corner[][] };

/** The corners as GeoJSON of the kind's shape, longitude first, to a centimetre. */
export function markGeometry(kind: MarkKind, corners: readonly LonLat[]): MarkGeometry {
  const list = corners.map(({ lon, lat }): Corner => [round(lon), round(lat)]);
  const shape = markShape(kind);
  if (shape === 'point') return { type: 'Point', coordinates: list[0]! };
  if (shape === 'line') return { type: 'LineString', coordinates: list };
  return { type: 'Polygon', coordinates: [[...list, list[0]!]] };
}

const round = (degrees: number): number => Number(degrees.toFixed(7));
