import type { Map as MapView } from 'maplibre-gl';
import type { MapInk } from './ink.ts';
import { markPaths, type SymbolPaths, siteRing } from './symbol-paths.ts';

const BOX = 24;
const PER_UNIT = 3;

/** Draws the marks and the site ring in the page's ink and hands them to the map; drawn again when the ink changes. */
export function addSymbols(map: MapView, ink: MapInk): void {
  for (const [kind, paths] of Object.entries(markPaths)) put(map, `mark-${kind}`, (pen) => drawMark(pen, paths, ink));
  put(map, 'site-unread', (pen) => {
    pen.lineWidth = 1.7;
    pen.strokeStyle = ink.ink;
    pen.fillStyle = ink.leaf;
    const ring = new Path2D(siteRing);
    pen.fill(ring);
    pen.stroke(ring);
  });
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

function put(map: MapView, id: string, draw: (pen: CanvasRenderingContext2D) => void): void {
  const canvas = document.createElement('canvas');
  canvas.width = BOX * PER_UNIT;
  canvas.height = BOX * PER_UNIT;
  const pen = canvas.getContext('2d')!;
  pen.scale(PER_UNIT, PER_UNIT);
  pen.lineCap = 'round';
  pen.lineJoin = 'round';
  draw(pen);
  const image = pen.getImageData(0, 0, canvas.width, canvas.height);
  if (map.hasImage(id)) map.updateImage(id, image);
  else map.addImage(id, image, { pixelRatio: PER_UNIT });
}
