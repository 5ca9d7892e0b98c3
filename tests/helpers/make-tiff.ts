import { deflateSync } from 'node:zlib';
import { packLzw } from './lzw-pack.ts';

type Numbers = 'uint8' | 'int8' | 'uint16' | 'int16' | 'uint32' | 'int32' | 'float32' | 'float64' | 'uint64';

/** An odd TIFF for a test; whatever is left out is the plainest choice. Heights are row-major in file order. */
export interface OddTiff {
  readonly width: number;
  readonly height: number;
  readonly heights: ArrayLike<number>;
  readonly sample?: Numbers;
  readonly bigEndian?: boolean;
  readonly big?: boolean;
  /** Tile side; without it, strips of `stripRows` rows. */
  readonly tile?: number;
  readonly stripRows?: number;
  readonly compression?: 1 | 5 | 8 | number;
  readonly predictor?: 1 | 2;
  /** Indices of blocks that are left out (offset and byte count 0). */
  readonly sparse?: readonly number[];
  readonly bands?: number;
  readonly noData?: string;
  readonly metadata?: string;
  readonly scale?: readonly number[];
  readonly tie?: readonly number[];
  readonly matrix?: readonly number[];
  /** Geokeys as pairs of key and short value. */
  readonly keys?: readonly (readonly [number, number])[];
  /** Value of NewSubfileType. */
  readonly kind?: number;
  /** Blocks lie behind all directories, as in a file for reading by parts; before their own directory without it. */
  readonly blocksLast?: boolean;
  /** Further images behind this one. */
  readonly more?: readonly OddTiff[];
  /** Further tags: number, type code, values. */
  readonly tags?: readonly (readonly [number, number, readonly number[]])[];
}

const bytesOf: Readonly<Record<Numbers, number>> = {
  uint8: 1,
  int8: 1,
  uint16: 2,
  int16: 2,
  uint32: 4,
  int32: 4,
  float32: 4,
  float64: 8,
  uint64: 8,
};
const typeSize: Readonly<Record<number, number>> = { 2: 1, 3: 2, 4: 4, 12: 8, 16: 8 };

/** A plain UTM place for tests that do not care: 1 m cells, pixel-is-area, EPSG:32609. */
export const somewhere = {
  scale: [1, 1, 0],
  tie: [0, 0, 0, 580000, 4872000, 0],
  keys: [
    [1024, 1],
    [1025, 1],
    [3072, 32609],
  ],
} as const;

/** The bytes of a TIFF: header, directories with their values, blocks. */
export function makeTiff(spec: OddTiff): Uint8Array {
  if (!spec.blocksLast) return Uint8Array.from(written(spec, null).out);
  // Directories are as long wherever the blocks lie: written once to learn where they end.
  const { out, tail } = written(spec, written(spec, 0).out.length);
  return Uint8Array.from([...out, ...tail]);
}

/** Header and directories, the blocks among them or, from byte `blocksAt` on, in `tail`. */
function written(spec: OddTiff, blocksAt: number | null): { readonly out: number[]; readonly tail: number[] } {
  const images = [spec, ...(spec.more ?? [])].map((image) => ({
    ...image,
    big: spec.big ?? false,
    bigEndian: spec.bigEndian ?? false,
  }));
  const little = !spec.bigEndian;
  const out: number[] = [];
  const tail: number[] = [];
  const number = (value: number, bytes: number): number[] => {
    const view = new DataView(new ArrayBuffer(8));
    if (bytes === 8) view.setBigUint64(0, BigInt(value), little);
    else if (bytes === 4) view.setUint32(0, value, little);
    else view.setUint16(0, value, little);
    return [...new Uint8Array(view.buffer, 0, bytes)];
  };
  const word = spec.big ? 8 : 4;
  out.push(...(little ? [0x49, 0x49] : [0x4d, 0x4d]), ...number(spec.big ? 43 : 42, 2));
  if (spec.big) out.push(...number(8, 2), 0, 0);
  let link = out.length;
  out.push(...number(0, word));
  const patch = (at: number, value: number): void => {
    out.splice(at, word, ...number(value, word));
  };
  for (const image of images) {
    const blocks = blocksOf(image);
    const offsets: number[] = [];
    blocks.forEach((block, i) => {
      const left = image.sparse?.includes(i);
      offsets.push(left ? 0 : blocksAt === null ? out.length : blocksAt + tail.length);
      if (!left) for (const byte of block) (blocksAt === null ? out : tail).push(byte);
    });
    const tags = tagsOf(
      image,
      offsets,
      blocks.map((block, i) => (image.sparse?.includes(i) ? 0 : block.length)),
    );
    const values = tags.map(([, type, list]) => encoded(list, type, little));
    const beyond = values.map((bytes) => {
      if (bytes.length <= word) return 0;
      while (out.length % 2) out.push(0);
      const at = out.length;
      out.push(...bytes);
      return at;
    });
    while (out.length % 2) out.push(0);
    patch(link, out.length);
    out.push(...number(tags.length, spec.big ? 8 : 2));
    tags.forEach(([id, type, list], i) => {
      out.push(...number(id, 2), ...number(type, 2), ...number(list.length, word));
      if (beyond[i]) out.push(...number(beyond[i], word));
      else out.push(...values[i], ...new Array<number>(word - values[i].length).fill(0));
    });
    link = out.length;
    out.push(...number(0, word));
  }
  return { out, tail };
}

function tagsOf(image: OddTiff, offsets: number[], counts: number[]): [number, number, number[]][] {
  const bands = image.bands ?? 1;
  const sample = image.sample ?? 'float32';
  const format = sample.startsWith('float') ? 3 : sample.startsWith('int') ? 2 : 1;
  const tiled = image.tile !== undefined;
  const wide = image.big ? 16 : 4;
  const text = (value: string): number[] => [...new TextEncoder().encode(value), 0];
  const list: (readonly [number, number, readonly number[] | undefined])[] = [
    [254, 4, image.kind === undefined ? undefined : [image.kind]],
    [256, 4, [image.width]],
    [257, 4, [image.height]],
    [258, 3, new Array<number>(bands).fill(bytesOf[sample] * 8)],
    [259, 3, [image.compression ?? 1]],
    [262, 3, [1]],
    [277, 3, [bands]],
    [284, 3, [1]],
    [317, 3, image.predictor ? [image.predictor] : undefined],
    [339, 3, new Array<number>(bands).fill(format)],
    ...(tiled
      ? ([
          [322, 4, [image.tile!]],
          [323, 4, [image.tile!]],
          [324, wide, offsets],
          [325, wide, counts],
        ] as const)
      : ([
          [273, wide, offsets],
          [278, 4, [image.stripRows ?? image.height]],
          [279, wide, counts],
        ] as const)),
    [33550, 12, image.scale],
    [33922, 12, image.tie],
    [34264, 12, image.matrix],
    [34735, 3, image.keys && [1, 1, 0, image.keys.length, ...image.keys.flatMap(([key, value]) => [key, 0, 1, value])]],
    [42112, 2, image.metadata === undefined ? undefined : text(image.metadata)],
    [42113, 2, image.noData === undefined ? undefined : text(image.noData)],
    ...(image.tags ?? []),
  ];
  return list.filter((tag): tag is [number, number, number[]] => tag[2] !== undefined).sort((a, b) => a[0] - b[0]);
}

function encoded(list: readonly number[], type: number, little: boolean): number[] {
  const size = typeSize[type];
  const view = new DataView(new ArrayBuffer(list.length * size));
  list.forEach((value, i) => {
    if (type === 12) view.setFloat64(i * 8, value, little);
    else if (type === 16) view.setBigUint64(i * 8, BigInt(value), little);
    else if (type === 4) view.setUint32(i * 4, value, little);
    else if (type === 3) view.setUint16(i * 2, value, little);
    else view.setUint8(i, value);
  });
  return [...new Uint8Array(view.buffer)];
}

/** Blocks row-major; tiles are filled up to their size with 0. */
function blocksOf(image: OddTiff): Uint8Array[] {
  const { width, height, tile } = image;
  const across = tile ? Math.ceil(width / tile) : 1;
  const rows = tile ?? image.stripRows ?? height;
  const blocks: Uint8Array[] = [];
  for (let top = 0; top < height; top += rows) {
    for (let c = 0; c < across; c++) {
      const left = c * (tile ?? 0);
      const blockWidth = tile ?? width;
      const blockHeight = tile ?? Math.min(rows, height - top);
      const cells: number[] = [];
      for (let y = top; y < top + blockHeight; y++) {
        for (let x = left; x < left + blockWidth; x++) {
          const value = x < width && y < height ? image.heights[y * width + x] : 0;
          for (let band = 0; band < (image.bands ?? 1); band++) cells.push(value);
        }
      }
      blocks.push(packed(cells, blockWidth * (image.bands ?? 1), image));
    }
  }
  return blocks;
}

function packed(cells: number[], rowCells: number, image: OddTiff): Uint8Array {
  const sample = image.sample ?? 'float32';
  const size = bytesOf[sample];
  const view = new DataView(new ArrayBuffer(cells.length * size));
  const little = !image.bigEndian;
  cells.forEach((value, i) => {
    const at = i * size;
    if (sample === 'float32') view.setFloat32(at, value, little);
    else if (sample === 'float64') view.setFloat64(at, value, little);
    else if (size === 8) view.setBigUint64(at, BigInt(value), little);
    else if (size === 4) view.setUint32(at, value, little);
    else if (size === 2) view.setUint16(at, value, little);
    else view.setUint8(at, value);
  });
  if (image.predictor === 2) difference(view, rowCells, size, little);
  const bytes = new Uint8Array(view.buffer);
  if (image.compression === 5) return packLzw(bytes);
  return image.compression === 8 ? deflateSync(bytes) : bytes;
}

/** Horizontal differences from the right, as big whole numbers, so that no shortcut of the reader is repeated here. */
function difference(view: DataView, rowCells: number, size: number, little: boolean): void {
  const get = (at: number): bigint => {
    let value = 0n;
    for (let b = 0; b < size; b++) value = value * 256n + BigInt(view.getUint8(little ? at + size - 1 - b : at + b));
    return value;
  };
  const set = (at: number, value: bigint): void => {
    for (let b = 0; b < size; b++) {
      view.setUint8(little ? at + b : at + size - 1 - b, Number((value >> BigInt(8 * b)) & 255n));
    }
  };
  const modulus = 1n << BigInt(8 * size);
  for (let row = 0; row < view.byteLength; row += rowCells * size) {
    for (let i = rowCells - 1; i > 0; i--) {
      const at = row + i * size;
      set(at, (get(at) - get(at - size) + modulus) % modulus);
    }
  }
}
