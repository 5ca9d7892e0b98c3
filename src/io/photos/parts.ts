import { ascii, viewOf } from './bytes.ts';
import type { ImageType } from './image-type.ts';

/** A piece of an image file: a JPEG segment by its marker's second byte, a PNG or WebP chunk by its name. */
export interface Part {
  readonly name: string;
  /** The piece as it stands in the file, with its head. */
  readonly all: Uint8Array;
  /** What it holds. */
  readonly body: Uint8Array;
}

/**
 * The pieces of an image file up to its end; what stands behind the end (a second picture, a film) is no piece. Null where the
 * file is not built as its kind is, or ends early.
 */
export function partsOf(bytes: Uint8Array, type: ImageType): Part[] | null {
  if (type === 'image/jpeg') return jpegParts(bytes);
  return type === 'image/png' ? pngParts(bytes) : webpParts(bytes);
}

/** Name of the compressed picture data behind a JPEG's scan head. */
export const SCAN = 'scan';

/** JPEG: FF, marker, length of the rest; scans run to the next marker that is neither a stuffed 00 nor a restart. */
function jpegParts(bytes: Uint8Array): Part[] | null {
  const parts: Part[] = [];
  let at = 2;
  while (at + 4 <= bytes.length || (at + 2 <= bytes.length && bytes[at + 1] === 0xd9)) {
    if (bytes[at] !== 0xff) return null;
    const marker = bytes[at + 1]!;
    if (marker === 0xff) {
      at++;
      continue;
    }
    if (marker === 0xd9) return parts.some(({ name }) => name === SCAN) ? parts : null;
    const length = (bytes[at + 2]! << 8) | bytes[at + 3]!;
    const end = at + 2 + length;
    if (length < 2 || end > bytes.length) return null;
    parts.push({ name: marker.toString(16), all: bytes.subarray(at, end), body: bytes.subarray(at + 4, end) });
    at = end;
    if (marker !== 0xda) continue;
    const scanEnd = endOfScan(bytes, at);
    parts.push({ name: SCAN, all: bytes.subarray(at, scanEnd), body: bytes.subarray(at, scanEnd) });
    at = scanEnd;
  }
  return null;
}

function endOfScan(bytes: Uint8Array, start: number): number {
  for (let at = start; at + 1 < bytes.length; at++) {
    if (bytes[at] !== 0xff) continue;
    const next = bytes[at + 1]!;
    if (next !== 0 && next !== 0xff && !(next >= 0xd0 && next <= 0xd7)) return at;
  }
  return bytes.length;
}

/** PNG: length, name, body, checksum; ends with IEND [source: png3]. */
function pngParts(bytes: Uint8Array): Part[] | null {
  const view = viewOf(bytes);
  const parts: Part[] = [];
  for (let at = 8; at + 12 <= bytes.length; ) {
    const length = view.getUint32(at);
    const end = at + 12 + length;
    if (end > bytes.length) return null;
    const name = ascii(bytes, at + 4, 4);
    parts.push({ name, all: bytes.subarray(at, end), body: bytes.subarray(at + 8, end - 4) });
    if (name === 'IEND') return parts;
    at = end;
  }
  return null;
}

/** WebP: name, length, body, padded to even lengths, inside one RIFF of a stated length [source: webp-container]. */
function webpParts(bytes: Uint8Array): Part[] | null {
  if (bytes.length < 12) return null;
  const view = viewOf(bytes);
  const fileEnd = 8 + view.getUint32(4, true);
  if (fileEnd > bytes.length) return null;
  const parts: Part[] = [];
  for (let at = 12; at + 8 <= fileEnd; ) {
    const length = view.getUint32(at + 4, true);
    const end = at + 8 + length;
    if (end > fileEnd) return null;
    const padded = Math.min(end + (length % 2), fileEnd);
    parts.push({ name: ascii(bytes, at, 4), all: bytes.subarray(at, padded), body: bytes.subarray(at + 8, end) });
    at = padded;
  }
  return parts.length > 0 ? parts : null;
}
