import type { Apparatus } from '../../../src/book/index.ts';
import type { Anchor, HaulAnchors } from '../../../src/rigging/index.ts';
import { from } from './keeps.ts';
import type { End, Parked } from './parked.ts';
import { alongAt, type Point, rightAt } from './plane.ts';
import type { TwinRoad } from './road.ts';

/** Fall of the road at a station, metres a metre, pointing down. */
export function fallAt(road: TwinRoad, s: number): Point {
  const [along, right] = [alongAt(road, s), rightAt(road, s)];
  return { x: road.across * right.x - road.climb * along.x, y: road.across * right.y - road.climb * along.y };
}

const ENDS_M: readonly number[] = [0, -6, 6];
/** Of the figures of one layout the ground is asked for more closely: its direction may matter most between middle and end. */
export const CLOSELY_M: readonly number[] = [0, -6, -4, -2, 2, 4, 6];

/** A parked apparatus as an anchor: on a straight road once, on a bend with the ground under its middle and ends, or every so often. */
export function anchorsUnder(road: TwinRoad, apparatus: Apparatus, { stationM }: Parked, offsM = ENDS_M): Anchor[] {
  return (road.curvature === 0 ? [0] : offsM).map((offM) => ({
    ...{ kind: 'apparatus', id: apparatus.id, emptyMassKg: apparatus.emptyMassKg },
    fall: fallAt(road, stationM + offM),
    attachmentKn: Math.min(...apparatus.attachments.map(({ ratedKn }) => ratedKn!)),
    attachments: apparatus.attachments.length,
  }));
}

/** Lines of a turned haul whose belay hangs on the apparatus at the turn. */
export const turnedLines = (turn: Anchor, at: End, bend: Point, edge: Point, main: Anchor, end: End): HaulAnchors => ({
  ...{ main, turn: { anchor: turn, towardMain: from(bend, end) }, belay: turn, handTurn: null },
  ...{ mainTowardEdge: from(bend, edge), belayTowardEdge: from(at, edge) },
});

/** Lines of a straight haul on one apparatus; `way` where its hauling end turns along the road. */
export const straightLines = (main: Anchor, end: End, edge: Point, way: Point | null): HaulAnchors => ({
  ...{ main, turn: null, belay: main, mainTowardEdge: from(end, edge), belayTowardEdge: from(end, edge) },
  handTurn: way && { anchor: main, towardSystem: from(end, edge), alongTeam: way },
});
