import type { Grid } from '../../src/terrain/index.ts';
import { normaliseAzimuth, toDegrees } from '../../src/units/index.ts';
import type { FineGround } from '../ground/tiles.ts';
import type { ByCreek } from '../land/creek.ts';
import { convergenceDeg, gridScale } from '../position.ts';
import type { RoadDesign } from '../road/road-design.ts';
import type { SlopeKind } from '../road/shapes.ts';
import { trueAngle } from './angle.ts';
import { trueEdge } from './edge.ts';
import { fallLine, straightTo } from './fall-line.ts';
import { heightOn, sectionOf } from './section.ts';
import { besideBench, type SideKind } from './side-kind.ts';

/** The truth beside one metre of road; lengths are metres on the ground, offsets from the true middle line, outward. */
export interface KeySide {
  readonly kind: SideKind;
  readonly margin: number;
  readonly slopeKind: SlopeKind;
  readonly edgeM: number | null;
  /** Where 12 % is passed: inside the edge on a soft shoulder. */
  readonly firmM: number | null;
  readonly edgeX: number | null;
  readonly edgeY: number | null;
  readonly edgeZ: number | null;
  readonly descent: KeyDescent | null;
}

export interface KeyDescent {
  readonly azimuthDeg: number;
  readonly lengthM: number;
  readonly dropM: number;
  readonly governingDeg: number;
  readonly fromM: number;
  readonly endX: number;
  readonly endY: number;
  readonly why: string;
  readonly steps: readonly { readonly distanceM: number; readonly heightM: number }[];
  /** Roads whose bench the descent meets, and how far from the edge. */
  readonly crossings: readonly { readonly road: string; readonly distanceM: number }[];
}

export interface KeyPlace {
  readonly ground: FineGround;
  readonly smooth: Grid;
  readonly roads: readonly RoadDesign[];
  /** Where the water runs. */
  readonly creekAt: (x: number, y: number) => ByCreek | null;
}

/** The truth beside one side of a road at a station. */
export function keySide(place: KeyPlace, road: RoadDesign, side: 0 | 1, i: number): KeySide {
  const { ground } = place;
  const design = road.sides[side];
  const other = road.sides[side === 0 ? 1 : 0].half[i];
  const cut = sectionOf(road, side, i);
  const slopeKind = design.kind[i];
  const nominal = design.half[i];
  const none = { margin: 9, slopeKind, edgeM: null, firmM: null, edgeX: null, edgeY: null, edgeZ: null, descent: null };
  if (road.gap[i]) return { ...none, kind: 'flat' };
  const inner = -(other - 0.5);
  const first = trueEdge(ground, cut, nominal, inner, design.berm[i] > 0.05 ? 1.35 : 0);
  const at = first?.offsetM ?? nominal;
  const { kind, margin } = besideBench(ground, cut, at);
  const falls = kind === 'drop' || kind === 'bank';
  const edge = falls ? at : nominal;
  const x = cut.x + cut.dx * edge;
  const y = cut.y + cut.dy * edge;
  return {
    kind,
    margin,
    slopeKind,
    edgeM: edge / gridScale,
    firmM: falls ? firmEdge(ground, cut, nominal, edge) / gridScale : null,
    edgeX: x,
    edgeY: y,
    edgeZ: heightOn(ground, cut, edge),
    descent: kind === 'drop' ? keyDescent(place, road, i, x, y, Math.atan2(cut.dy, cut.dx)) : null,
  };
}

/** The first distance, from 2 m inside the nominal edge, past which a metre of ground falls by over 12 %; the edge at most. */
function firmEdge(ground: FineGround, cut: ReturnType<typeof sectionOf>, nominal: number, edge: number): number {
  for (let d = Math.max(0, nominal - 2); d < edge; d += 0.1) {
    if (heightOn(ground, cut, d) - heightOn(ground, cut, d + 1) > 0.12) return Math.min(edge, d + 0.3);
  }
  return edge;
}

function keyDescent(
  place: KeyPlace,
  road: RoadDesign,
  i: number,
  x: number,
  y: number,
  heading: number,
): KeyDescent | null {
  const inWater = (px: number, py: number) => {
    const by = place.creekAt(px, py);
    return by !== null && Math.abs(by.offsetM) < 2.2;
  };
  const line = fallLine(place.ground, place.smooth, { x, y }, heading, inWater);
  const to = straightTo(line);
  const endX = line.x[to];
  const endY = line.y[to];
  const length = Math.hypot(endX - x, endY - y);
  if (length < 2) return null;
  const descent = { x, y, dx: (endX - x) / length, dy: (endY - y) / length };
  const angle = trueAngle(place.ground, descent, length);
  if (!angle) return null;
  return {
    azimuthDeg: normaliseAzimuth(toDegrees(Math.atan2(descent.dx, descent.dy)) + convergenceDeg),
    lengthM: length / gridScale,
    dropM: angle.dropM,
    governingDeg: toDegrees(Math.atan(angle.governing * gridScale)),
    fromM: angle.fromM / gridScale,
    endX,
    endY,
    why: to === line.x.length - 1 ? line.why : 'fall line bends',
    steps: angle.steps,
    crossings: crossings(place.roads, road, i, descent, length),
  };
}

function crossings(
  roads: readonly RoadDesign[],
  own: RoadDesign,
  i: number,
  descent: { x: number; y: number; dx: number; dy: number },
  length: number,
): { road: string; distanceM: number }[] {
  const out: { road: string; distanceM: number }[] = [];
  for (const road of roads) {
    let first = Number.POSITIVE_INFINITY;
    for (let k = 0; k < road.line.x.length; k += 2) {
      if (road === own && Math.abs(k - i) < 30) continue;
      const rx = road.line.x[k] - descent.x;
      const ry = road.line.y[k] - descent.y;
      const along = rx * descent.dx + ry * descent.dy;
      if (along < 3 || along > length) continue;
      const across = Math.abs(rx * descent.dy - ry * descent.dx);
      const half = Math.max(road.sides[0].half[k], road.sides[1].half[k]);
      if (across < 1.5 && along - half < first) first = along - half;
    }
    if (first < Number.POSITIVE_INFINITY) out.push({ road: road.name, distanceM: first / gridScale });
  }
  return out;
}
