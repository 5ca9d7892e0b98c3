import type { Map as MapView } from 'maplibre-gl';
import { ringPaths, ringRadius } from '../plan/index.ts';
import type { MapInk } from './ink.ts';
import { putImage } from './put-image.ts';

/** A clear image as wide as a road is drawn from afar, 7 pixels: it shows nothing and takes room. */
export const ROAD_ROOM = 'road-room';
const looks = ['low', 'steep', 'high', 'undecided'] as const;

/** Draws the rings of sites: cut by ground at 20°, 40° or 66°, broken and crossed where undecided, empty where not worked out. */
export function addSiteRings(map: MapView, ink: MapInk): void {
  const ring = new Path2D();
  ring.arc(12, 12, ringRadius, 0, 2 * Math.PI);
  const outline = (pen: CanvasRenderingContext2D): void => {
    pen.strokeStyle = ink.ink;
    pen.lineWidth = 1.5;
    pen.stroke(ring);
  };
  const blank = (pen: CanvasRenderingContext2D): void => {
    pen.fillStyle = ink.leaf;
    pen.fill(ring);
  };
  putImage(map, ROAD_ROOM, 7, 7, () => {});
  putImage(map, 'site-unread', 24, 24, (pen) => {
    blank(pen);
    outline(pen);
  });
  for (const look of looks) {
    const paths = ringPaths(look);
    const line = new Path2D(paths.ground);
    const area = new Path2D(paths.fill);
    putImage(map, `site-${look}`, 24, 24, (pen) => {
      blank(pen);
      fill(pen, look, area, ink);
      pen.strokeStyle = ink.ink;
      pen.lineWidth = 1.5;
      if (look === 'undecided') pen.setLineDash([2.4, 1.7]);
      pen.stroke(line);
      pen.setLineDash([]);
      outline(pen);
    });
  }
}

function fill(pen: CanvasRenderingContext2D, look: string, area: Path2D, ink: MapInk): void {
  pen.save();
  pen.clip(area);
  if (look !== 'undecided') {
    pen.fillStyle = look === 'low' ? ink.low : look === 'steep' ? ink.steep : ink.high;
    pen.fillRect(0, 0, 24, 24);
  }
  pen.strokeStyle = look === 'steep' && ink.night ? ink.leaf : ink.ink;
  pen.lineWidth = 0.9;
  if (look === 'steep' || look === 'undecided') hatch(pen, 1);
  if (look === 'undecided') hatch(pen, -1);
  pen.restore();
}

/** Parallel strokes over the whole box, falling to the right where `lean` is 1. */
function hatch(pen: CanvasRenderingContext2D, lean: 1 | -1): void {
  pen.beginPath();
  for (let x = -24; x <= 48; x += 4) {
    pen.moveTo(x, lean === 1 ? 0 : 24);
    pen.lineTo(x + 24, lean === 1 ? 24 : 0);
  }
  pen.stroke();
}
