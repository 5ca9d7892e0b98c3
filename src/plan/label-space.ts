import { type Box, boxesAlong, holds, overlapOf } from './boxes.ts';
import type { Pens } from './pens.ts';
import { element, pathThrough, text } from './svg.ts';
import { textWidth } from './text-width.ts';

export type LabelPen =
  | 'label'
  | 'strong'
  | 'small'
  | 'note'
  | 'word'
  | 'waterWord'
  | 'stop'
  | 'accentLabel'
  | 'assumedLabel';

export interface Label {
  /** What it names, page point. */
  readonly x: number;
  readonly y: number;
  readonly lines: readonly string[];
  readonly pen: LabelPen;
}

export interface Placed {
  readonly label: Label;
  /** Left end of the first baseline. */
  readonly textX: number;
  readonly textY: number;
}

/** Where labels may stand; drawing units. */
export interface LabelSpace {
  readonly bounds: Box;
  /** Boxes that a label must keep clear of: ink, and every label placed so far. */
  readonly taken: Box[];
  /** The labels placed so far alone: no leader may run through one. */
  readonly words: Box[];
}

const LINE = 14;

/** Overlap of a box with everything taken, 0 where it is free; infinite where it leaves the bounds. */
export function crowding(box: Box, bounds: Box, taken: readonly Box[]): number {
  if (!holds(bounds, box)) return Number.POSITIVE_INFINITY;
  return taken.reduce((sum, other) => sum + overlapOf(box, other), 0);
}

/** How crowded a label would stand, its leader included. */
export function crowdingOf({ label, textX, textY }: Placed, { bounds, taken, words }: LabelSpace): number {
  const box = crowding(labelBox(label.lines, textX, textY), bounds, taken);
  if (box > 0) return box;
  const leader = boxesAlong(leaderOf({ label, textX, textY }), 1);
  return leader.reduce((sum, step) => sum + words.reduce((all, word) => all + overlapOf(step, word), 0), 0);
}

/** Takes a place for good. */
export function settle(placed: Placed, { taken, words }: LabelSpace): Placed {
  const box = labelBox(placed.label.lines, placed.textX, placed.textY);
  taken.push(box, ...boxesAlong(leaderOf(placed), 1.5));
  words.push(box);
  return placed;
}

/** A label's text with a leader from what it names to the nearer end of its lines. */
export function labelWithLeader(placed: Placed, pens: Pens): string {
  const { label, textX, textY } = placed;
  const line = leaderOf(placed);
  const leader = line.length > 0 ? element('path', { ...pens.leader, d: pathThrough(line) }) : '';
  // To the left of its point the text ends at its leader, however wide it really is.
  const right = textX + textWidth(label.lines, 12);
  const [x, anchor] = right < label.x ? [right, 'end'] : [textX, 'start'];
  const pen = { ...pens[label.pen], 'text-anchor': anchor };
  return leader + label.lines.map((words, i) => text(x, textY + i * LINE, words, pen)).join('');
}

/** Box of a label's text, with a hair around it. */
function labelBox(lines: readonly string[], x: number, y: number): Box {
  return { x0: x - 1, y0: y - 11, x1: x + textWidth(lines, 12) + 1, y1: y + 4 + (lines.length - 1) * LINE };
}

/** Ends of a leader, x, y flat; none where the text stands close to what it names. */
function leaderOf({ label: { x, y, lines }, textX, textY }: Placed): number[] {
  const right = textX + textWidth(lines, 12);
  const middle = textY - 4 + ((lines.length - 1) * LINE) / 2;
  const beside = textX > x || right < x;
  const endX = textX > x ? textX - 3 : right < x ? right + 3 : x;
  const endY = beside ? middle : textY > y ? textY - 12 : textY + 5 + (lines.length - 1) * LINE;
  return Math.hypot(endX - x, endY - y) > 9 ? [x, y, endX, endY] : [];
}
