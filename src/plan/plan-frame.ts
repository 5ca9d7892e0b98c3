import type { Position } from '../study/index.ts';
import type { Box } from './boxes.ts';
import type { Pens } from './pens.ts';
import type { PlanGround } from './plan-ground.ts';

/** A plan view's place on the page: the descent runs to the right from the edge. */
export interface PlanFrame {
  /** Drawing units per metre. */
  readonly scale: number;
  readonly box: Box;
  readonly edgeX: number;
  readonly edgeY: number;
  readonly ground: PlanGround;
  readonly pens: Pens;
  /** Forces and clearances stand beside the drawing, not on it. */
  readonly brief: boolean;
  /** Boxes that labels must keep clear of; every label that is placed adds its own. */
  readonly taken: Box[];
  /** Labels placed so far. */
  readonly words: Box[];
  /** Page point of a position. */
  at(position: Position): [number, number];
  /** Page points of [along, aside] pairs, metres. */
  page(points: readonly number[]): number[];
  /** Direction on the page of a true bearing, degrees clockwise from the x axis. */
  pageDeg(azimuthDeg: number): number;
}

export function planFrame(
  ground: PlanGround,
  pens: Pens,
  {
    scale,
    box,
    edgeX,
    edgeY,
    brief = false,
  }: Pick<PlanFrame, 'scale' | 'box' | 'edgeX' | 'edgeY'> & { brief?: boolean },
): PlanFrame {
  const page = (points: readonly number[]): number[] =>
    points.map((metres, i) => (i % 2 === 0 ? edgeX : edgeY) + metres * scale);
  return {
    ...{ scale, box, edgeX, edgeY, ground, pens, brief, page },
    taken: [],
    words: [],
    at(position) {
      const [x, y] = page(ground.place(position));
      return [x, y];
    },
    pageDeg: (azimuthDeg) => azimuthDeg - ground.azimuthDeg,
  };
}
