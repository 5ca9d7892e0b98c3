import type { ImageType } from '../../src/io/photos/index.ts';

/** A word that stands in every description of the sample images. */
export const secret = 'SECRET-PLACE';

interface ExifOptions {
  readonly little: boolean;
  readonly orientation: number;
  readonly lat?: number;
  readonly lon?: number;
  readonly datum?: string;
  /** Denominator of every fraction. */
  readonly below?: number;
  readonly letters?: string;
}

/** A TIFF block as cameras write it: orientation, maker, day, and a place of 44.0123 N, 128.0456 W. */
export function exifBlock({
  little,
  orientation,
  lat = 44.0123,
  lon = 128.0456,
  datum = 'WGS-84',
  below = 10_000,
  letters = 'NW',
}: ExifOptions): Uint8Array {
  const bytes = new Uint8Array(600);
  const view = new DataView(bytes.buffer);
  bytes.set(ascii(little ? 'II' : 'MM'));
  view.setUint16(2, 42, little);
  view.setUint32(4, 8, little);
  let free = 300;
  const keep = (content: Uint8Array): number => {
    bytes.set(content, free);
    free += content.length + (content.length % 2);
    return free - content.length - (content.length % 2);
  };
  const directory = (at: number, entries: [number, number, number, number | Uint8Array][]): void => {
    view.setUint16(at, entries.length, little);
    entries.forEach(([tag, kind, count, value], i) => {
      const entry = at + 2 + 12 * i;
      view.setUint16(entry, tag, little);
      view.setUint16(entry + 2, kind, little);
      view.setUint32(entry + 4, count, little);
      if (typeof value !== 'number') {
        if (value.length <= 4) bytes.set(value, entry + 8);
        else view.setUint32(entry + 8, keep(value), little);
      } else if (kind === 3) view.setUint16(entry + 8, value, little);
      else view.setUint32(entry + 8, value, little);
    });
  };
  const fractions = (degrees: number): Uint8Array => {
    const out = new Uint8Array(24);
    const at = new DataView(out.buffer);
    const whole = Math.floor(degrees);
    const minutes = Math.floor((degrees - whole) * 60 + 1e-9);
    const seconds = ((degrees - whole) * 60 - minutes) * 60;
    [whole, minutes, seconds].forEach((part, i) => {
      at.setUint32(8 * i, Math.round(part * 10_000), little);
      at.setUint32(8 * i + 4, below, little);
    });
    return out;
  };
  directory(8, [
    [0x010f, 2, secret.length + 1, ascii(`${secret}\0`)],
    [0x0112, 3, 1, orientation],
    [0x8769, 4, 1, 120],
    [0x8825, 4, 1, 160],
  ]);
  directory(120, [[0x9003, 2, 20, ascii('2026:05:03 12:00:00\0')]]);
  directory(160, [
    [1, 2, 2, ascii(`${letters[0] ?? ''}\0`)],
    [2, 5, 3, fractions(lat)],
    [3, 2, 2, ascii(`${letters[1] ?? ''}\0`)],
    [4, 5, 3, fractions(lon)],
    [0x12, 2, datum.length + 1, ascii(`${datum}\0`)],
  ]);
  return bytes.slice(0, free);
}

/** Image files built piece by piece, 30 × 20 pixels, with Exif, comments and something behind their end; their pictures cannot be shown. */
export const sampleImages: Readonly<Record<ImageType, (exif: Uint8Array) => Uint8Array<ArrayBuffer>>> = {
  'image/jpeg': (exif) =>
    joined(
      [0xff, 0xd8],
      segment(0xe0, joined(ascii('JFIF\0'), [1, 1, 0, 0, 1, 0, 1, 0, 0])),
      segment(0xe1, joined(ascii('Exif\0\0'), exif)),
      segment(0xe1, ascii(`http://ns.adobe.com/xap/1.0/\0<x>${secret}</x>`)),
      segment(0xe2, ascii(`MPF\0${secret}`)),
      segment(0xed, ascii(`Photoshop 3.0\0${secret}`)),
      segment(0xfe, ascii(`comment ${secret}`)),
      segment(0xdb, new Uint8Array(65)),
      segment(0xc0, Uint8Array.of(8, 0, 20, 0, 30, 1, 1, 0x11, 0)),
      segment(0xda, Uint8Array.of(1, 1, 0, 0, 63, 0)),
      ascii('PICTURE'),
      [0xff, 0x00, 0xff, 0xd0, 1, 2, 3],
      [0xff, 0xd9],
      ascii(`${secret} behind the end`),
    ),
  'image/png': (exif) =>
    joined(
      [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a],
      chunk('IHDR', Uint8Array.of(0, 0, 0, 30, 0, 0, 0, 20, 8, 2, 0, 0, 0)),
      chunk('eXIf', exif),
      chunk('tEXt', ascii(`Comment\0${secret}`)),
      chunk('IDAT', ascii('PICTURE')),
      chunk('IEND', new Uint8Array(0)),
      ascii(`${secret} behind the end`),
    ),
  'image/webp': (exif) => {
    const body = joined(
      ascii('WEBP'),
      riff('VP8X', Uint8Array.of(0x2c, 0, 0, 0, 29, 0, 0, 19, 0, 0)),
      riff('VP8 ', joined([0, 0, 0, 0x9d, 0x01, 0x2a, 30, 0, 20, 0], ascii('PICTURE'))),
      riff('EXIF', exif),
      riff('XMP ', ascii(`<x>${secret}</x>`)),
    );
    return joined(ascii('RIFF'), four(body.length, true), body, ascii(`${secret} behind the end`));
  },
};

const ascii = (text: string): Uint8Array => Uint8Array.from(text, (c) => c.charCodeAt(0));

function four(value: number, little: boolean): Uint8Array {
  const out = new Uint8Array(4);
  new DataView(out.buffer).setUint32(0, value, little);
  return out;
}

const segment = (marker: number, body: Uint8Array): Uint8Array =>
  joined([0xff, marker, (body.length + 2) >> 8, (body.length + 2) & 255], body);
const chunk = (name: string, body: Uint8Array): Uint8Array =>
  joined(four(body.length, false), ascii(name), body, [0, 0, 0, 0]);
const riff = (name: string, body: Uint8Array): Uint8Array =>
  joined(ascii(name), four(body.length, true), body, body.length % 2 ? [0] : []);

function joined(...parts: (Uint8Array | number[])[]): Uint8Array<ArrayBuffer> {
  return Uint8Array.from(parts.flatMap((part) => [...part]));
}
