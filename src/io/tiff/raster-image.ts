import type { GeoTIFFImage } from 'geotiff';
import { UserError } from '../../units/index.ts';
import {
  type BlockFormat,
  checkCompression,
  checkPredictor,
  LERC,
  SAMPLE_BYTES,
  type SampleType,
} from '../decode/index.ts';
import { blockList } from './block-list.ts';
import type { ByteRange } from './read-ranges.ts';

/** One image of a TIFF, full resolution or overview: its blocks and how they are packed. */
export interface RasterImage {
  readonly width: number;
  readonly height: number;
  readonly blockWidth: number;
  readonly blockHeight: number;
  readonly blocksAcross: number;
  readonly blocksDown: number;
  /** The format of a whole block; `scale`, `offset` and `noData` are set by the reader. */
  readonly format: BlockFormat;
  /** Rows that block row `row` holds: the last strip of a file is shorter, tiles are not. */
  rowsOf(row: number): number;
  /** Where a block lies in the file; length 0 where the file leaves the block out. */
  rangeOf(index: number): Promise<ByteRange>;
}

/** What heights mean, from the file's metadata: metres = stored number · scale + offset. */
export interface HeightRule {
  readonly noData: number | null;
  readonly scale: number;
  readonly offset: number;
}

/** Uncompressed strips are read by stretches of about this many bytes, not whole. */
const STRETCH = 65_536;
/** A block larger than this many cells is refused: it would have to be unpacked whole for one point. */
const LARGEST_BLOCK = 2 ** 26;

/**
 * Describes one image of an opened TIFF. Throws `UserError` where it is not one band of numbers that can be read without
 * loss.
 */
export async function rasterImage(
  image: GeoTIFFImage,
  littleEndian: boolean,
  rule: HeightRule,
  source: string,
): Promise<RasterImage> {
  const directory = image.fileDirectory;
  const bands = image.getSamplesPerPixel();
  if (bands !== 1) {
    throw new UserError(
      'bands',
      `${source} has ${bands} bands; one band of heights is expected: take it out with "gdal_translate -b 1".`,
    );
  }
  const width = image.getWidth();
  const height = image.getHeight();
  const compression = directory.getValue('Compression') ?? 1;
  checkCompression(compression, source);
  const sample = sampleType(image.getSampleFormat(), image.getBitsPerSample(), source);
  const predictor = compression === LERC ? 1 : ((await directory.loadValue('Predictor')) ?? 1);
  checkPredictor(predictor, sample === 'float32' || sample === 'float64', source);
  const lerc = compression === LERC ? await directory.loadValue('LercParameters') : undefined;

  const tiled = image.isTiled;
  const blockWidth = image.getTileWidth();
  const stripRows = image.getTileHeight();
  const rowBytes = blockWidth * SAMPLE_BYTES[sample];
  // Rows of an uncompressed strip can be told apart, so that a strip as large as the file is not read whole.
  const cut = !tiled && compression === 1 && predictor === 1 && stripRows * rowBytes > STRETCH;
  const blockHeight = cut ? stretchRows(stripRows, rowBytes) : stripRows;
  if (!(width > 0 && height > 0 && blockWidth > 0 && blockHeight > 0)) {
    throw new UserError('broken-tiff', `${source} states no size for its image; copy or download it again.`);
  }
  if (blockWidth * blockHeight > LARGEST_BLOCK) {
    throw new UserError(
      'block-size',
      `${source} packs ${blockWidth} × ${blockHeight} cells into one block; write it again with "gdal_translate -co TILED=YES".`,
    );
  }
  const blocksAcross = Math.ceil(width / blockWidth);
  const blocksDown = Math.ceil(height / blockHeight);
  const { rangeOf: lookUp } = await blockList(image);
  const perStrip = stripRows / blockHeight;

  const rowsOf = (row: number): number => (tiled ? blockHeight : Math.min(blockHeight, height - row * blockHeight));
  return {
    width,
    height,
    blockWidth,
    blockHeight,
    blocksAcross,
    blocksDown,
    format: {
      compression,
      predictor,
      sample,
      littleEndian,
      width: blockWidth,
      height: blockHeight,
      lercPacking: Number(lerc?.[1] ?? 0),
      ...rule,
    },
    rowsOf,
    async rangeOf(index) {
      if (!cut) return lookUp(index);
      const strip = await lookUp(Math.floor(index / perStrip));
      if (strip.length === 0) return strip;
      return { offset: strip.offset + (index % perStrip) * blockHeight * rowBytes, length: rowsOf(index) * rowBytes };
    },
  };
}

/** The most rows that divide a strip evenly and stay within a stretch; 1 at worst. */
function stretchRows(stripRows: number, rowBytes: number): number {
  for (let rows = Math.max(1, Math.floor(STRETCH / rowBytes)); rows > 1; rows--) {
    if (stripRows % rows === 0) return rows;
  }
  return 1;
}

/** How numbers are stored, from the tags SampleFormat and BitsPerSample. [source: tiff6] */
function sampleType(format: number, bits: number, source: string): SampleType {
  const kinds: Readonly<Record<number, string>> = { 1: 'uint', 2: 'int', 3: 'float' };
  const name = `${kinds[format] ?? `format ${format} `}${bits}`;
  if (name in SAMPLE_BYTES) return name as SampleType;
  throw new UserError(
    'sample-type',
    `${source} stores ${name} numbers; 8, 16 or 32 bit whole numbers or 32 or 64 bit floats are expected: write it again with "gdal_translate -ot Float32".`,
  );
}
