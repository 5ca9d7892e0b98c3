import type { Area } from '../../../book/index.ts';
import { type LonLat, localPlane, parsePosition } from '../../../geo/index.ts';
import { FOOT_M, type UnitSystem, UserError } from '../../../units/index.ts';

/** Corners of the ring that stands for a circle; its sides lie outside the circle, so that nothing within is left out. */
const CORNERS = 32;

/**
 * An area as somebody wrote it: its corners, one position a line, or "POSITION within 300" in the unit of the screen. Throws a
 * `UserError` where it is neither.
 */
export function areaOfText(text: string, units: UnitSystem): Area {
  const round = /^([\s\S]+?)\s+within\s+([\d.]+)\s*(ft|m)?\s*$/i.exec(text);
  if (round) {
    const unit = round[3]?.toLowerCase() ?? (units === 'us' ? 'ft' : 'm');
    return ringAround(positionOf(round[1]!), Number(round[2]) * (unit === 'ft' ? FOOT_M : 1));
  }
  const corners = text
    .split('\n')
    .map((line) => line.trim())
    .filter(Boolean)
    .map(positionOf);
  if (corners.length < 3) {
    throw new UserError(
      'area',
      `This area has ${corners.length === 1 ? '1 corner' : `${corners.length} corners`}: expected three or more positions, one a line, or a position "within 300"; add them.`,
    );
  }
  const ring = [...corners, corners[0]!].map(({ lon, lat }): [number, number] => [lon, lat]);
  return { type: 'Polygon', coordinates: [ring] };
}

/** The corners of an area's outer ring, one position a line. */
export function textOfArea(area: unknown): string {
  const { type, coordinates } = area as Area;
  const ring = (type === 'Polygon' ? coordinates[0] : coordinates[0]?.[0]) as
    | readonly (readonly number[])[]
    | undefined;
  return (ring ?? [])
    .slice(0, -1)
    .map(([lon, lat]) => `${lat!.toFixed(6)}, ${lon!.toFixed(6)}`)
    .join('\n');
}

/** A ring of `CORNERS` around a position, metres, clear of the circle on its outside. */
export function ringAround(centre: LonLat, radiusM: number): Area {
  if (!(radiusM > 0 && radiusM <= 50_000)) {
    throw new UserError(
      'area-radius',
      `A radius of ${Math.round(radiusM)} m came: expected over 0 and up to 50,000 m; correct it.`,
    );
  }
  const plane = localPlane(centre);
  const outside = radiusM / Math.cos(Math.PI / CORNERS);
  const corners = Array.from({ length: CORNERS }, (_, i): [number, number] => {
    const angle = (2 * Math.PI * i) / CORNERS;
    const { lon, lat } = plane.toLonLat({ x: outside * Math.sin(angle), y: outside * Math.cos(angle) });
    return [lon, lat];
  });
  return { type: 'Polygon', coordinates: [[...corners, corners[0]!]] };
}

function positionOf(text: string): LonLat {
  const read = parsePosition(text);
  if (!read.ok) throw read.error;
  return read.value.position;
}
