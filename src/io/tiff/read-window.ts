import { needsDoubles } from '../decode/index.ts';
import type { BlockStore } from './block-store.ts';
import type { RasterImage } from './raster-image.ts';

/** Cells of an image in file order: columns [left, right), rows [top, bottom). */
export interface Window {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/**
 * Heights of a window inside the image, metres, row-major, NaN where there is no data or where the file leaves a block
 * out: such a block is missing ground even where the file declares no no-data number, never height 0. With `southUp` the
 * rows are turned so that the north row comes first.
 */
export async function readWindow(
  image: RasterImage,
  store: BlockStore,
  window: Window,
  southUp: boolean,
  signal?: AbortSignal,
): Promise<Float32Array | Float64Array> {
  const width = window.right - window.left;
  const height = window.bottom - window.top;
  const out = needsDoubles(image.format.sample) ? new Float64Array(width * height) : new Float32Array(width * height);
  const { blockWidth, blockHeight, blocksAcross } = image;
  const wanted: number[] = [];
  for (let row = Math.floor(window.top / blockHeight); row * blockHeight < window.bottom; row++) {
    for (let col = Math.floor(window.left / blockWidth); col * blockWidth < window.right; col++) {
      wanted.push(row * blocksAcross + col);
    }
  }
  await store.each(
    wanted,
    (index, block) => {
      const blockLeft = (index % blocksAcross) * blockWidth;
      const blockTop = Math.floor(index / blocksAcross) * blockHeight;
      const left = Math.max(window.left, blockLeft);
      const right = Math.min(window.right, blockLeft + blockWidth);
      const bottom = Math.min(window.bottom, blockTop + blockHeight);
      for (let row = Math.max(window.top, blockTop); row < bottom; row++) {
        const outRow = southUp ? window.bottom - 1 - row : row - window.top;
        const to = outRow * width + left - window.left;
        if (!block) {
          out.fill(Number.NaN, to, to + right - left);
          continue;
        }
        const from = (row - blockTop) * blockWidth - blockLeft;
        out.set(block.subarray(from + left, from + right), to);
      }
    },
    signal,
  );
  return out;
}
