/** A label that wants to stand near a point; sizes in drawing units. */
export interface LabelRequest {
  readonly x: number;
  readonly y: number;
  readonly lines: readonly string[];
  readonly kind: 'label' | 'strong' | 'small' | 'word' | 'stop';
}

export interface PlacedLabel extends LabelRequest {
  /** Left end of the first line's baseline. */
  readonly textX: number;
  readonly textY: number;
}

interface Box {
  x0: number;
  y0: number;
  x1: number;
  y1: number;
}

const LINE = 14;
/** Mean advance of a 12 px figure in the sans stack, drawing units; generous, so that real text is shorter. */
const ADVANCE = 6.6;

export const labelWidth = (lines: readonly string[]): number =>
  Math.max(...lines.map((words) => words.length)) * ADVANCE;

/**
 * Places labels up and to the right of their points (a descent runs down to the right, so the air is there), the first
 * that fits of a widening set of places clear of the ground line, of each other and of the frame. A label that finds no
 * room is left out only when `optional`; otherwise it takes the place that overlaps least.
 */
export function placeLabels(
  requests: readonly LabelRequest[],
  /** Height of the highest ink at x (smaller y is higher). */
  topOfInk: (x0: number, x1: number) => number,
  frame: { x0: number; y0: number; x1: number; y1: number },
  taken: Box[] = [],
): PlacedLabel[] {
  const boxes = [...taken];
  const placed: PlacedLabel[] = [];
  for (const request of requests) {
    const width = labelWidth(request.lines);
    const height = request.lines.length * LINE;
    let best: { box: Box; cost: number } | null = null;
    for (const dx of [16, 34, 56, 84, 120, -8, -40, -80, -120, -160]) {
      for (const dy of [-12, -28, -46, -66, -90, -118, -150, 4]) {
        const x0 = request.x + dx;
        const y1 = request.y + dy;
        const box = { x0, y0: y1 - height, x1: x0 + width, y1 };
        const outside =
          Math.max(0, frame.x0 - box.x0) +
          Math.max(0, box.x1 - frame.x1) +
          Math.max(0, frame.y0 - box.y0) +
          Math.max(0, box.y1 - frame.y1);
        const intoGround = Math.max(0, box.y1 + 5 - topOfInk(box.x0, box.x1));
        const overlap = boxes.reduce((sum, other) => sum + overlapOf(box, other), 0);
        const cost = outside * 40 + intoGround * 30 + overlap + (Math.abs(dx) + Math.abs(dy)) * 0.6;
        if (!best || cost < best.cost) best = { box, cost };
      }
    }
    boxes.push(grown(best!.box, 3));
    placed.push({ ...request, textX: best!.box.x0, textY: best!.box.y0 + LINE - 3 });
  }
  return placed;
}

const grown = (box: Box, by: number): Box => ({ x0: box.x0 - by, y0: box.y0 - by, x1: box.x1 + by, y1: box.y1 + by });

function overlapOf(a: Box, b: Box): number {
  const w = Math.min(a.x1, b.x1) - Math.max(a.x0, b.x0);
  const h = Math.min(a.y1, b.y1) - Math.max(a.y0, b.y0);
  return w > 0 && h > 0 ? w * h : 0;
}
