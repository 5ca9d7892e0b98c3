import { GeoTIFF, type GeoTIFFImage } from 'geotiff';
import { UserError } from '../../units/index.ts';
import type { ByteSource } from '../ports.ts';
import { abortable } from './abortable.ts';
import { headerSource, type SliceSource } from './header-source.ts';

/** The images of a TIFF: the first at full resolution, then its overviews, finer ones first. */
export interface OpenedTiff {
  readonly images: readonly GeoTIFFImage[];
  readonly littleEndian: boolean;
}

const REDUCED = 1;
const MASK = 4;
/** A chain of directories longer than this is taken for a loop. */
const MOST_IMAGES = 64;

/** Reads the directories of a TIFF. Throws `UserError` where the bytes are no TIFF, are cut off, or hide cells by a mask. */
export async function openTiff(source: ByteSource, signal?: AbortSignal): Promise<OpenedTiff> {
  const header = headerSource(source);
  const [start] = await abortable(header.fetch([{ offset: 0, length: 16 }]), signal);
  checkSignature(new Uint8Array(start), source.name);
  try {
    return await abortable(directories(header, source.name), signal);
  } catch (cause) {
    if (cause instanceof UserError || signal?.aborted) throw cause;
    throw new UserError(
      'broken-tiff',
      `${source.name} begins as a TIFF, but its directory cannot be read: it is cut off or damaged; copy or download it again.`,
      { cause },
    );
  }
}

async function directories(header: SliceSource, name: string): Promise<OpenedTiff> {
  const tiff = await GeoTIFF.fromSource(header as never);
  // Lists that the library loads later it reads as little-endian whatever the file says; loaded at once they come right.
  tiff.parser.eager = !tiff.littleEndian;
  const images: GeoTIFFImage[] = [await tiff.getImage(0)];
  const width = images[0].getWidth();
  for (let i = 1; (await tiff.requestIFD(i - 1)).nextIFDByteOffset !== 0; i++) {
    if (i === MOST_IMAGES) throw new RangeError('The directories of the file form a loop.');
    const image = await tiff.getImage(i);
    const kind = image.fileDirectory.getValue('NewSubfileType') ?? 0;
    if (kind & MASK) {
      if (kind & REDUCED) continue;
      throw new UserError(
        'mask',
        `${name} hides cells by a mask image, which is not read here; write the mask into the heights with "gdalwarp -dstnodata -9999".`,
      );
    }
    if (kind & REDUCED && image.getWidth() < width) images.push(image);
  }
  const [full, ...overviews] = images;
  overviews.sort((a, b) => b.getWidth() - a.getWidth());
  return { images: [full, ...overviews], littleEndian: tiff.littleEndian };
}

function checkSignature(start: Uint8Array, name: string): void {
  const order = String.fromCharCode(...start.subarray(0, 2));
  const version = order === 'MM' ? start[3] : start[2];
  if ((order === 'II' || order === 'MM') && (version === 42 || version === 43)) return;
  const what = start.length === 0 ? 'it is empty' : `it begins with ${shown(start)}`;
  throw new UserError('not-tiff', `${name} is no GeoTIFF: ${what}; give an elevation raster as GeoTIFF (.tif).`);
}

/** The first bytes as a person can read them. */
function shown(bytes: Uint8Array): string {
  const text = String.fromCharCode(...bytes.subarray(0, 12));
  return /^[\x20-\x7e]+$/.test(text)
    ? `"${text}"`
    : `the bytes ${[...bytes.subarray(0, 4)].map((byte) => byte.toString(16).padStart(2, '0')).join(' ')}`;
}
