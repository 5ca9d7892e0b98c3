import { normaliseAzimuth, toDegrees } from '../../src/units/index.ts';
import type { KeyRoad } from '../key/write-key.ts';
import { convergenceDeg, lonLat } from '../position.ts';
import type { RoadKey } from '../recipe.ts';

/** A place beside a road: grid metres, and the unit vector that points out from the road there. */
export interface RoadPlace {
  readonly x: number;
  readonly y: number;
  readonly outX: number;
  readonly outY: number;
}

/** The place on a road's edge at a station, or `outwardM` past it (negative: toward the road). */
export function atEdge(key: readonly KeyRoad[], road: RoadKey, station: number, side: string, outwardM = 0): RoadPlace {
  const { columns } = key.find((k) => k.key === road)!;
  const value = (name: string, i = station) => columns[name][i] as number | null;
  const [mx, my] = [value('x')!, value('y')!];
  const before = Math.max(0, station - 1);
  const dx = value('x', station + 1)! - value('x', before)!;
  const dy = value('y', station + 1)! - value('y', before)!;
  const length = Math.hypot(dx, dy);
  const sign = side === 'left' ? 1 : -1;
  const outX = (-dy / length) * sign;
  const outY = (dx / length) * sign;
  const edge = value(`${side}.edgeM`) ?? 3.8;
  return { x: mx + outX * (edge + outwardM), y: my + outY * (edge + outwardM), outX, outY };
}

/** GeoJSON position of a place, `outM` further out and `alongM` further to the left of the way out. */
export function positionOf({ x, y, outX, outY }: RoadPlace, outM = 0, alongM = 0): [number, number] {
  return lonLat(x + outX * outM - outY * alongM, y + outY * outM + outX * alongM);
}

/** True azimuth of the way out, degrees to a tenth. */
export const azimuthOut = ({ outX, outY }: RoadPlace): number =>
  Math.round(normaliseAzimuth(toDegrees(Math.atan2(outX, outY)) + convergenceDeg) * 10) / 10;
