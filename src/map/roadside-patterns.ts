import type { Map as MapView } from 'maplibre-gl';
import type { RoadsideLook } from '../workers/index.ts';
import { roadsideLooks } from '../workers/index.ts';
import type { MapInk } from './ink.ts';
import { putImage } from './put-image.ts';

/** Size of a pattern's tile, along the road and across it, pixels. */
const ALONG = 16;
const ACROSS = 16;

/**
 * Draws the bands' patterns: low is pale with few hachures, steep a middle tone with closer ones, high solid dark; undecided is
 * crossed on paper in the tone of what to plan as; unread is bare but for dots. The upper side of a tile is the road's.
 */
export function addRoadsidePatterns(map: MapView, ink: MapInk): void {
  for (const look of roadsideLooks) {
    putImage(map, `roadside-${look}`, ALONG, ACROSS, (pen) => draw(pen, look, ink));
  }
}

function draw(pen: CanvasRenderingContext2D, look: RoadsideLook, ink: MapInk): void {
  const plan = look.split('-').at(-1)!;
  const tone = plan === 'high' ? ink.high : plan === 'steep' ? ink.steep : ink.low;
  pen.lineCap = 'butt';
  pen.strokeStyle = ink.ink;
  if (look === 'unread') {
    pen.fillStyle = ink.ink2;
    for (const x of [4, 12]) pen.fillRect(x - 1, ACROSS / 2 - 1, 2, 2);
    return;
  }
  if (look.startsWith('undecided')) {
    pen.fillStyle = ink.leaf;
    pen.fillRect(0, 0, ALONG, ACROSS);
    // Crossed hatch; the wider its strokes, the steeper the plan.
    pen.strokeStyle = plan === 'low' ? ink.ink2 : plan === 'steep' ? ink.steep : ink.high;
    pen.lineWidth = plan === 'high' ? 3 : plan === 'steep' ? 2 : 1.1;
    strokes(
      pen,
      [-16, -8, 0, 8, 16, 24].map((x) => [x, 0, x + 16, 16]),
    );
    strokes(
      pen,
      [-16, -8, 0, 8, 16, 24].map((x) => [x + 16, 0, x, 16]),
    );
    return;
  }
  pen.fillStyle = tone;
  pen.fillRect(0, 0, ALONG, ACROSS);
  if (plan === 'high') {
    pen.strokeStyle = ink.leaf;
    pen.lineWidth = 0.7;
    strokes(pen, [[8, 0, 8, 16]]);
    return;
  }
  pen.lineWidth = plan === 'steep' ? 1.5 : 1;
  const at = plan === 'steep' ? [2, 6, 10, 14] : [8];
  // Hachures: from the edge down-slope, long where steep, short where low.
  strokes(
    pen,
    at.map((x) => [x, 0, x, plan === 'steep' ? 16 : 10]),
  );
}

function strokes(pen: CanvasRenderingContext2D, lines: readonly (readonly number[])[]): void {
  pen.beginPath();
  for (const [x0, y0, x1, y1] of lines) {
    pen.moveTo(x0!, y0!);
    pen.lineTo(x1!, y1!);
  }
  pen.stroke();
}
