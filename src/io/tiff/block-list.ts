import type { GeoTIFFImage } from 'geotiff';
import { type ByteRange, cutOff } from './read-ranges.ts';

/** Where the blocks (tiles or strips) of an image lie in its file, in the order of the file's lists. */
export interface BlockList {
  /** Length 0 where the file leaves the block out. */
  rangeOf(index: number): Promise<ByteRange>;
  /** Every block where the lists are at hand; of lists too long for that the last row of blocks, which is written last. */
  known(): Promise<readonly ByteRange[]>;
}

/** Offset lists longer than this are looked up by entry instead of being loaded whole. */
const WHOLE_LIST = 200_000;

/** Reads the lists of offsets and byte counts; they are loaded whole and once unless they are very long. [source: tiff6] */
export async function blockList(image: GeoTIFFImage): Promise<BlockList> {
  const directory = image.fileDirectory;
  const offsets = image.isTiled ? 'TileOffsets' : 'StripOffsets';
  const counts = image.isTiled ? 'TileByteCounts' : 'StripByteCounts';
  const across = Math.ceil(image.getWidth() / image.getTileWidth());
  const blocks = across * Math.ceil(image.getHeight() / image.getTileHeight());
  const whole = blocks <= WHOLE_LIST;
  if (whole) await Promise.all([directory.loadValue(offsets), directory.loadValue(counts)]);

  async function rangeOf(index: number): Promise<ByteRange> {
    return {
      offset: Number((await directory.loadValueIndexed(offsets, index)) ?? 0),
      length: Number((await directory.loadValueIndexed(counts, index)) ?? 0),
    };
  }

  return {
    rangeOf,
    async known() {
      const first = whole ? 0 : blocks - across;
      return Promise.all(Array.from({ length: blocks - first }, (_, i) => rangeOf(first + i)));
    },
  };
}

/**
 * Refuses an image whose blocks end past its file's last byte: a copy or a download that broke off. Blocks that are left out
 * (byte count 0) are no fault. `fileBytes` null, of a source that cannot tell its size, lets everything pass.
 */
export async function checkLength(image: GeoTIFFImage, fileBytes: number | null, source: string): Promise<void> {
  if (fileBytes === null) return;
  const ranges = await (await blockList(image)).known();
  const end = ranges.reduce((last, { offset, length }) => (length > 0 ? Math.max(last, offset + length) : last), 0);
  if (end > fileBytes) throw cutOff(source, fileBytes, end);
}
