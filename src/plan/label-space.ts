import { type Box, holds, overlapOf } from './boxes.ts';
import type { Pens } from './pens.ts';
import { element, pathThrough, text } from './svg.ts';
import { textWidth } from './text-width.ts';

export type LabelPen = 'label' | 'strong' | 'small' | 'note' | 'word' | 'waterWord' | 'stop' | 'accentLabel';

export interface Label {
  /** What it names, page point. */
  readonly x: number;
  readonly y: number;
  readonly lines: readonly string[];
  readonly pen: LabelPen;
}

const LINE = 14;

/** The box of a label whose first baseline starts at x, y; drawing units. */
export function labelBox(lines: readonly string[], x: number, y: number, size = 12): Box {
  return { x0: x - 1, y0: y - 11, x1: x + textWidth(lines, size) + 1, y1: y + 4 + (lines.length - 1) * LINE };
}

/** Overlap of a box with everything taken, 0 where it is free and inside the frame. */
export function crowding(box: Box, frame: Box, taken: readonly Box[]): number {
  if (!holds(frame, box)) return Number.POSITIVE_INFINITY;
  return taken.reduce((sum, other) => sum + overlapOf(box, other), 0);
}

/** A label's text with a leader from what it names to the nearer end of its first line. */
export function labelWithLeader({ x, y, lines, pen }: Label, textX: number, textY: number, pens: Pens): string {
  const right = textX + textWidth(lines, 12);
  const middle = textY - 4 + ((lines.length - 1) * LINE) / 2;
  const endX = textX > x ? textX - 3 : right < x ? right + 3 : Math.min(Math.max(x, textX), right);
  const endY = textX > x || right < x ? middle : textY > y ? textY - 12 : textY + 4 + (lines.length - 1) * LINE;
  const leader =
    Math.hypot(endX - x, endY - y) > 9 ? element('path', { ...pens.leader, d: pathThrough([x, y, endX, endY]) }) : '';
  return leader + lines.map((words, i) => text(textX, textY + i * LINE, words, pens[pen])).join('');
}
