import { getDecoder } from 'geotiff';
import { UserError } from '../../units/index.ts';
import { unpackLzw } from './lzw.ts';

/** TIFF compression codes. [source: tiff6; tiff-registry] */
export const DEFLATE = 8;
const OLD_DEFLATE = 32946;
export const LERC = 34887;
export const ZSTD = 50000;
const NONE = 1;
const LZW = 5;
const PACKBITS = 32773;

const lossless: ReadonlySet<number> = new Set([NONE, LZW, DEFLATE, OLD_DEFLATE, PACKBITS, LERC, ZSTD]);

const names: Readonly<Record<number, string>> = {
  2: 'CCITT fax',
  3: 'CCITT fax',
  4: 'CCITT fax',
  6: 'JPEG',
  7: 'JPEG',
  34712: 'JPEG 2000',
  34925: 'LZMA',
  50001: 'WebP',
  50002: 'JPEG XL',
};

/** Throws `UserError` unless blocks packed with this compression code can be unpacked without loss. */
export function checkCompression(compression: number, source: string): void {
  if (lossless.has(compression)) return;
  const name = names[compression] ?? `code ${compression}`;
  throw new UserError(
    'compression',
    `${source} is compressed with ${name}, which is not read here; write it again with deflate, for example "gdal_translate -co COMPRESS=DEFLATE".`,
  );
}

type Inflate = (packed: Uint8Array) => Uint8Array<ArrayBuffer>;

let inflate: Inflate | null = null;

/** Replaces the way that deflate blocks are unpacked on this thread, where the machine has a quicker one. */
export function unpackDeflateWith(quicker: Inflate): void {
  inflate = quicker;
}

/**
 * Unpacks one block to `size` bytes, before any predictor; to whatever it holds where `size` is null (not for LZW). Throws
 * `UserError` where the block is broken, ends early, or where the page's policy keeps the decoder from running.
 */
export async function unpack(
  compression: number,
  packed: ArrayBuffer,
  size: number | null,
): Promise<Uint8Array<ArrayBuffer>> {
  let bytes: Uint8Array<ArrayBuffer>;
  try {
    bytes = await unpacked(compression, packed, size);
  } catch (cause) {
    if (cause instanceof UserError) throw cause;
    if (compression === ZSTD && wasForbidden(cause)) {
      throw new UserError(
        'decoder-refused',
        'The raster is compressed with zstd, whose decoder this page may not run; write it again with deflate, for example "gdal_translate -co COMPRESS=DEFLATE".',
        { cause },
      );
    }
    throw new UserError(
      'broken-block',
      `A block of the raster cannot be unpacked (${cause instanceof Error ? cause.message : String(cause)}); copy or download the file again.`,
      { cause },
    );
  }
  if (size === null) return bytes;
  if (bytes.length < size) {
    throw new UserError(
      'broken-block',
      `A block of the raster holds ${bytes.length} bytes where ${size} were expected; copy or download the file again.`,
    );
  }
  return bytes.length === size ? bytes : bytes.slice(0, size);
}

/** LZW by its own decoder: the library's is ten and more times slower and stops at 4093 table entries. */
async function unpacked(
  compression: number,
  packed: ArrayBuffer,
  size: number | null,
): Promise<Uint8Array<ArrayBuffer>> {
  if (compression === LZW && size !== null) return unpackLzw(new Uint8Array(packed), size);
  if ((compression === DEFLATE || compression === OLD_DEFLATE) && inflate) return inflate(new Uint8Array(packed));
  const decoder = await getDecoder(compression, {} as never);
  return new Uint8Array((await decoder.decodeBlock(packed)) as ArrayBuffer);
}

/** A content security policy shows as a failed fetch of the decoder's own bytes or a refused compilation. */
const wasForbidden = (cause: unknown): boolean =>
  cause instanceof Error &&
  (cause.name === 'CompileError' || /fetch|WebAssembly|Content Security/i.test(cause.message));
