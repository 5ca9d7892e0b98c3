import type { Polygon } from 'geojson';
import { localPlane } from '../geo/index.ts';
import type { Position, Study, StudyLayout, StudySpot } from '../study/index.ts';
import { toRadians } from '../units/index.ts';

/** Where things lie around the edge: metres along the descent (down-slope positive) and to its right hand. */
export interface PlanGround {
  /** True bearing of the descent; of the site's side where there is no descent. */
  readonly azimuthDeg: number;
  /** [along, aside], metres. */
  place(position: Position): [number, number];
}

/** The site's ground seen with the descent running to the right; its origin is the edge, or the site where there is none. */
export function planGround(study: Study): PlanGround {
  const azimuthDeg = study.descent?.azimuthDeg ?? study.site.sideAzimuthDeg;
  const plane = localPlane(study.edge ?? study.site);
  const s = Math.sin(toRadians(azimuthDeg));
  const c = Math.cos(toRadians(azimuthDeg));
  return {
    azimuthDeg,
    place(position) {
      const { x, y } = plane.toLocal(position);
      return [x * s + y * c, x * c - y * s];
    },
  };
}

/** Corners of a spot's outline, [along, aside] pairs flat, metres: front left, front right, rear right, rear left. */
export function spotCorners(ground: PlanGround, spot: StudySpot): number[] {
  const [along, aside] = ground.place(spot);
  // On this ground a bearing turns clockwise from the descent.
  const turn = toRadians(spot.headingDeg - ground.azimuthDeg);
  const [fx, fy] = [(Math.cos(turn) * spot.lengthM) / 2, (Math.sin(turn) * spot.lengthM) / 2];
  const [rx, ry] = [(-Math.sin(turn) * spot.widthM) / 2, (Math.cos(turn) * spot.widthM) / 2];
  return [
    ...[along + fx - rx, aside + fy - ry, along + fx + rx, aside + fy + ry],
    ...[along - fx + rx, aside - fy + ry, along - fx - rx, aside - fy - ry],
  ];
}

/** The spots that a layout stands on, each once. */
export function spotsOf(study: Study, { anchor, turn, lines }: StudyLayout): StudySpot[] {
  const ids = new Set([anchor, turn, lines.belay.anchor, lines.hand?.anchor]);
  return study.spots.filter(({ id }) => ids.has(id));
}

/** The keep-out's ring as [along, aside] pairs flat, metres, not closed; empty where it is no polygon. */
export function keepOutRing(ground: PlanGround, { keepOut }: StudyLayout): number[] {
  if (keepOut.type !== 'Polygon') return [];
  const ring = (keepOut as Polygon).coordinates[0] ?? [];
  return ring.slice(0, -1).flatMap(([lon, lat]) => ground.place({ lon, lat }));
}

/** Plan distance of the two ends of a haul field: from the turn (straight haul: the edge) to the anchor. */
export const fieldEnds = ({ points }: StudyLayout): [Position, Position] => [points.turn ?? points.edge, points.anchor];
