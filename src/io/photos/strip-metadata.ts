import { joined, viewOf } from './bytes.ts';
import type { ImageType } from './image-type.ts';
import { type Part, partsOf, SCAN } from './parts.ts';

/**
 * An image file with its picture alone: camera data, place, descriptions, previews and whatever stands behind its end are gone; colour
 * profile and orientation stay. The picture is not packed again. Null where the file is damaged.
 */
export function stripMetadata(bytes: Uint8Array, type: ImageType, orientation: number): Uint8Array<ArrayBuffer> | null {
  const parts = partsOf(bytes, type);
  if (!parts) return null;
  if (type === 'image/jpeg') return jpeg(parts, orientation);
  return type === 'image/png' ? png(bytes, parts) : webp(parts);
}

function jpeg(parts: readonly Part[], orientation: number): Uint8Array<ArrayBuffer> {
  const kept = parts.filter(isPicture).map(({ all }) => all);
  const turned = orientation > 1 && orientation <= 8 ? [orientationSegment(orientation)] : [];
  return joined([Uint8Array.of(0xff, 0xd8), ...turned, ...kept, Uint8Array.of(0xff, 0xd9)]);
}

/** Of the application segments only JFIF's (e0), a colour profile (e2) and the one that tells the colour model (ee) stay. */
function isPicture({ name, body }: Part): boolean {
  if (name === SCAN) return true;
  if (name === 'e0') return startsWith(body, 'JFIF\0');
  if (name === 'e2') return startsWith(body, 'ICC_PROFILE\0');
  return name === 'ee' ? startsWith(body, 'Adobe') : !/^(?:e[0-9a-f]|fe)$/.test(name);
}

/** An Exif segment that holds nothing but which way is up [source: exif232; tiff6]. */
function orientationSegment(orientation: number): Uint8Array {
  const segment = new Uint8Array(36);
  segment.set([0xff, 0xe1, 0, 34, 0x45, 0x78, 0x69, 0x66, 0, 0, 0x4d, 0x4d, 0, 42]);
  const view = viewOf(segment);
  view.setUint32(14, 8);
  view.setUint16(18, 1);
  view.setUint16(20, 0x0112);
  view.setUint16(22, 3);
  view.setUint32(24, 1);
  view.setUint16(28, orientation);
  return segment;
}

const pngChunks = new Set([
  'IHDR',
  'PLTE',
  'IDAT',
  'IEND',
  'tRNS',
  'gAMA',
  'cHRM',
  'sRGB',
  'iCCP',
  'sBIT',
  'bKGD',
  'pHYs',
  'cICP',
]);

const png = (bytes: Uint8Array, parts: readonly Part[]): Uint8Array<ArrayBuffer> =>
  joined([bytes.subarray(0, 8), ...parts.filter(({ name }) => pngChunks.has(name)).map(({ all }) => all)]);

const webpChunks = new Set(['VP8 ', 'VP8L', 'VP8X', 'ALPH', 'ICCP', 'ANIM', 'ANMF']);
/** Bits of VP8X that announce Exif and XMP. */
const ANNOUNCED = 0x0c;

function webp(parts: readonly Part[]): Uint8Array<ArrayBuffer> {
  const kept = parts
    .filter(({ name }) => webpChunks.has(name))
    .map(({ name, all }) => {
      if (name !== 'VP8X') return all;
      const head = all.slice();
      head[8]! &= ~ANNOUNCED;
      return head;
    });
  const file = joined([new Uint8Array(12), ...kept]);
  file.set([0x52, 0x49, 0x46, 0x46]);
  file.set([0x57, 0x45, 0x42, 0x50], 8);
  viewOf(file).setUint32(4, file.length - 8, true);
  return file;
}

const startsWith = (body: Uint8Array, text: string): boolean => [...text].every((c, i) => body[i] === c.charCodeAt(0));
