import type { Geometry, Position } from 'geojson';
import { type DistrictBounds, type LonLat, type PositionQuestion, parsePosition } from '../../geo/index.ts';

/**
 * A longitude and latitude from a file, in degrees: the position with what must be asked of it, or why it is none. A latitude over
 * 90° that would be a longitude is taken as swapped, and asked about.
 */
export function readPair(
  coordinates: Position,
  bounds: DistrictBounds | null,
): { position: LonLat; question: PositionQuestion | null } | string {
  const [lon, lat] = coordinates;
  if (typeof lon !== 'number' || typeof lat !== 'number' || !Number.isFinite(lon) || !Number.isFinite(lat)) {
    return 'has no usable position';
  }
  const read = parsePosition(`${plain(lat)}, ${plain(lon)}`, { bounds });
  if (!read.ok) return `has a position that is not on the Earth (${lat}, ${lon})`;
  const isAsWritten = Math.abs(lat) <= 90;
  const position = isAsWritten ? { lon, lat } : read.value.position;
  return { position, question: read.value.question };
}

/** What must be asked of a shape before it is added: of its first corner that looks wrong. */
export function placeQuestion(geometry: Geometry, bounds: DistrictBounds | null): PositionQuestion | null {
  if (bounds === null) return null;
  for (const corner of cornersOf(geometry)) {
    const read = readPair(corner, bounds);
    if (typeof read !== 'string' && read.question) return read.question;
  }
  return null;
}

function cornersOf(geometry: Geometry): Position[] {
  switch (geometry.type) {
    case 'Point':
      return [geometry.coordinates];
    case 'LineString':
      return geometry.coordinates;
    case 'Polygon':
      return geometry.coordinates.flat();
    case 'MultiPolygon':
      return geometry.coordinates.flat(2);
    default:
      return [];
  }
}

const plain = (degrees: number): string => (Math.abs(degrees) < 1e6 ? degrees.toFixed(8) : '999');
