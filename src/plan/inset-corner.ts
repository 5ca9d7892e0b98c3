import { type Box, grown, overlapOf } from './boxes.ts';
import type { PlanFrame } from './plan-frame.ts';

/** A map that may stand in a corner of the plan view, largest size first, drawing units. */
export interface PlanInset {
  readonly sizes: readonly { readonly width: number; readonly height: number }[];
  draw(box: Box): string;
}

/** Between the inset and what is drawn, drawing units. */
const CLEAR = 8;

/**
 * The corner of a plan view that is free for the largest size, the far side of the descent first; null where none is. It is taken from then on.
 */
export function insetCorner(frame: PlanFrame, { sizes }: PlanInset): Box | null {
  const { box, taken } = frame;
  for (const { width, height } of sizes) {
    const [left, right] = [box.x0, box.x1 - width];
    const [top, bottom] = [box.y0, box.y1 - height];
    for (const [x0, y0] of [
      [right, bottom],
      [right, top],
      [left, bottom],
      [left, top],
    ] as const) {
      const corner = { x0, y0, x1: x0 + width, y1: y0 + height };
      if (taken.some((other) => overlapOf(grown(corner, CLEAR), other) > 0)) continue;
      taken.push(grown(corner, CLEAR / 2));
      frame.words.push(corner);
      return corner;
    }
  }
  return null;
}
