import type { Map as MapView } from 'maplibre-gl';
import { markPaths, placePaths, type SymbolPaths } from '../plan/index.ts';
import type { MapInk } from './ink.ts';
import { putImage } from './put-image.ts';

const BOX = 24;

/** Draws the marks in the page's ink and hands them to the map. */
export function addSymbols(map: MapView, ink: MapInk): void {
  for (const [kind, paths] of Object.entries({ ...markPaths, ...placePaths })) {
    putImage(map, `mark-${kind}`, BOX, BOX, (pen) => drawMark(pen, paths, ink));
  }
}

function drawMark(pen: CanvasRenderingContext2D, { line, fine, dash, solid }: SymbolPaths, ink: MapInk): void {
  const whole = [line, fine, dash, solid].filter((path) => path !== undefined).map((path) => new Path2D(path));
  // A rim of paper keeps a mark readable over contours.
  pen.strokeStyle = ink.leaf;
  pen.lineWidth = 4;
  for (const path of whole) pen.stroke(path);
  pen.strokeStyle = ink.ink;
  pen.fillStyle = ink.ink;
  pen.lineWidth = 1.45;
  pen.stroke(new Path2D(line));
  if (solid) pen.fill(new Path2D(solid));
  if (dash) {
    pen.setLineDash([2.2, 1.9]);
    pen.stroke(new Path2D(dash));
    pen.setLineDash([]);
  }
  if (fine) {
    pen.lineWidth = 1;
    pen.stroke(new Path2D(fine));
  }
}
