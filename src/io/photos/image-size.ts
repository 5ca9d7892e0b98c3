import { viewOf } from './bytes.ts';
import type { ImageType } from './image-type.ts';
import { partsOf } from './parts.ts';

/** Width and height of an image's picture in pixels as stored, before it is turned upright; null where the file is damaged. */
export function imageSize(bytes: Uint8Array, type: ImageType): { widthPx: number; heightPx: number } | null {
  const parts = partsOf(bytes, type);
  if (!parts) return null;
  const size = type === 'image/jpeg' ? jpeg(parts) : type === 'image/png' ? png(parts) : webp(parts);
  return size && size[0] > 0 && size[1] > 0 ? { widthPx: size[0], heightPx: size[1] } : null;
}

type Parts = NonNullable<ReturnType<typeof partsOf>>;

/** Start of frame: c0 to cf but tables (c4, c8, cc); precision, height, width. */
function jpeg(parts: Parts): [number, number] | null {
  const frame = parts.find(({ name }) => /^c[0-35-79-bd-f]$/.test(name))?.body;
  return frame && frame.length >= 5 ? [viewOf(frame).getUint16(3), viewOf(frame).getUint16(1)] : null;
}

function png(parts: Parts): [number, number] | null {
  const head = parts[0]?.name === 'IHDR' ? parts[0].body : null;
  return head && head.length >= 8 ? [viewOf(head).getUint32(0), viewOf(head).getUint32(4)] : null;
}

/** VP8X and VP8L hold width and height less one in 24 and 14 bits; VP8 in 14 bits behind its start code [source: webp-container]. */
function webp(parts: Parts): [number, number] | null {
  const first = parts[0]!;
  const { body } = first;
  if (first.name === 'VP8X' && body.length >= 10) {
    const at = (i: number): number => 1 + (body[i]! | (body[i + 1]! << 8) | (body[i + 2]! << 16));
    return [at(4), at(7)];
  }
  if (first.name === 'VP8L' && body.length >= 5) {
    const bits = viewOf(body).getUint32(1, true);
    return [1 + (bits & 0x3fff), 1 + ((bits >>> 14) & 0x3fff)];
  }
  if (first.name !== 'VP8 ' || body.length < 10) return null;
  const view = viewOf(body);
  return [view.getUint16(6, true) & 0x3fff, view.getUint16(8, true) & 0x3fff];
}
