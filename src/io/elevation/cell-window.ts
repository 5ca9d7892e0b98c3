import type { Georeference, Window } from '../tiff/index.ts';

/** Cells kept beyond a wanted box on every side: a cubic kernel and a smoothed gradient reach that far. */
const MARGIN = 4;
/** Points along each side of a box that are turned into cells; sides bend a little between CRSs. */
const ALONG = 8;

/**
 * The cells of a raster that a box covers, north row first, with a margin, or null where it does not touch the raster.
 * `toRaster` turns box coordinates into the raster's own.
 */
export function cellWindow(
  place: Georeference,
  size: { width: number; height: number },
  box: { west: number; south: number; east: number; north: number },
  toRaster: (x: number, y: number) => [number, number],
): Window | null {
  let left = Infinity;
  let right = -Infinity;
  let top = Infinity;
  let bottom = -Infinity;
  for (let i = 0; i <= ALONG; i++) {
    for (let j = 0; j <= ALONG; j++) {
      const x = box.west + ((box.east - box.west) * i) / ALONG;
      const y = box.south + ((box.north - box.south) * j) / ALONG;
      const [rx, ry] = toRaster(x, y);
      const col = (rx - place.x0) / place.stepX;
      const row = (place.y0 - ry) / place.stepY;
      if (!(Number.isFinite(col) && Number.isFinite(row))) continue;
      left = Math.min(left, col);
      right = Math.max(right, col);
      top = Math.min(top, row);
      bottom = Math.max(bottom, row);
    }
  }
  const window = {
    left: Math.max(0, Math.floor(left) - MARGIN),
    top: Math.max(0, Math.floor(top) - MARGIN),
    right: Math.min(size.width, Math.ceil(right) + MARGIN + 1),
    bottom: Math.min(size.height, Math.ceil(bottom) + MARGIN + 1),
  };
  // The margin alone is no touch: the box itself must reach the outline of the cells.
  const touches = right > -0.5 && left < size.width - 0.5 && bottom > -0.5 && top < size.height - 0.5;
  return touches && window.left < window.right && window.top < window.bottom ? window : null;
}
