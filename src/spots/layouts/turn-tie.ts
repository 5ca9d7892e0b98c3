import { toRadians } from '../../units/index.ts';
import type { Bend } from './bends.ts';
import { LAYOUT_LIMITS } from './layout-limits.ts';
import type { Stand } from './stands.ts';

/** What holds a change of direction, and the unit vector of its tie from there to the bend. */
export interface TurnTie {
  readonly turn: Stand;
  readonly x: number;
  readonly y: number;
}

/** The second leg may leave the road's direction by about this: beyond it the tie of no anchor fits. */
const LEG_SLACK_DEG = 8;
const LEAST_SQUARE = LAYOUT_LIMITS.tieLeastM ** 2;
const MOST_SQUARE = LAYOUT_LIMITS.tieMostM ** 2;
/** A tie leaves the end of an apparatus within about 70° of square, so that it does not lie along the body. */
const LEAVES_END = 0.35;
const FITS_COS = Math.cos(toRadians(LAYOUT_LIMITS.tieOffDeg - LEG_SLACK_DEG / 2));
const PERHAPS_COS = Math.cos(toRadians(LAYOUT_LIMITS.tieOffDeg + LEG_SLACK_DEG));

/** Nearest distance from the edge at which the tie of a tree or rock fits any anchor, metres. */
export type NearestBends = Map<Stand, number>;

/**
 * Those of some stands whose tie to a bend is neither too short nor too long and within reach of the resultant of both legs. A tree
 * or rock stays where it is and its tie is made to any length: of bends taken nearest to the edge first, no farther one than needed.
 */
export function turnTies(bend: Bend, turns: readonly Stand[], nearest: NearestBends): TurnTie[] {
  const ties: TurnTie[] = [];
  const { x, y, pull, toEdgeM } = bend;
  for (const turn of turns) {
    const { tie } = turn;
    if (tie.spot === null && toEdgeM > (nearest.get(turn) ?? Infinity)) continue;
    const dx = x - tie.x;
    const dy = y - tie.y;
    const square = dx * dx + dy * dy;
    if (square < LEAST_SQUARE || square > MOST_SQUARE) continue;
    const tieM = Math.sqrt(square);
    const along = dx * pull.x + dy * pull.y;
    if (along < PERHAPS_COS * tieM) continue;
    if (tie.spot === null && along >= FITS_COS * tieM) nearest.set(turn, toEdgeM);
    if (tie.spot !== null && dx * tie.outX + dy * tie.outY < LEAVES_END * tieM) continue;
    ties.push({ turn, x: dx / tieM, y: dy / tieM });
  }
  return ties;
}

const TIE_WITHIN = Math.cos(toRadians(LAYOUT_LIMITS.tieOffDeg));

/** True where a tie lies along the resultant of both legs, the second one the unit vector (ux, uy) towards the anchor. */
export function tieFits(tie: TurnTie, { towardEdge }: Bend, ux: number, uy: number, efficiency: number): boolean {
  const rx = towardEdge.x + ux / efficiency;
  const ry = towardEdge.y + uy / efficiency;
  return tie.x * rx + tie.y * ry >= TIE_WITHIN * Math.sqrt(rx * rx + ry * ry);
}
