import type { LocalPlane, LonLat } from '../geo/index.ts';
import type { Grid, Ground, GroundLayer, SurfaceInfo, TerrainKind } from '../terrain/index.ts';
import type { VerticalUnit } from '../units/index.ts';
import type { BlockFormat, BlockHeights } from './decode/block-format.ts';

/** Where bytes come from: a file, a blob, an address, memory, or a recorder around one of them in a test. */
export interface ByteSource {
  /** Name for sentences: the path or address as the user gave it. */
  readonly name: string;
  /** Bytes from `offset`, at most `length`; shorter only at the end of the source. */
  read(offset: number, length: number, signal?: AbortSignal): Promise<ArrayBuffer>;
  /** Total size in bytes, or null where the source cannot tell. */
  size(signal?: AbortSignal): Promise<number | null>;
  close?(): Promise<void>;
}

/** What the user says of a raster that the raster may not say itself. */
export interface ElevationOptions {
  readonly crs?: string;
  readonly verticalUnit?: VerticalUnit;
  readonly kind?: TerrainKind;
  readonly verticalRmseM?: number;
  /** Day of collection, YYYY-MM-DD, where the raster states none. */
  readonly collectedOn?: string;
}

/** Unpacks blocks of rasters, on this thread or away from it. */
export interface DecodePool {
  /**
   * Heights of one packed block; `packed` is handed over and must not be used afterwards. Always settles: with the
   * heights, with a `UserError`, or with the signal's reason where it is aborted before the work began.
   */
  decode(format: BlockFormat, packed: ArrayBuffer, signal?: AbortSignal): Promise<BlockHeights>;
  close(): Promise<void>;
}

/** Makes photos smaller: on a canvas in the browser's worker; nothing else can. */
export interface PhotoShrinker {
  /**
   * The picture, upright, with no side over `longestPx`, packed as JPEG; null where this platform cannot read it. Camera data is
   * gone. A picture that is small already may be packed again all the same.
   */
  shrink(bytes: Uint8Array<ArrayBuffer>, longestPx: number): Promise<Uint8Array<ArrayBuffer> | null>;
}

/** An opened raster. */
export interface ElevationSource {
  readonly info: SurfaceInfo;
  /** True where the position lies on the raster's extent (it may still be no-data there). */
  covers(position: LonLat): boolean;
  /** The part of the raster within `halfSizeM` of `centre` (plane metres), or null where it does not reach there. */
  readLayer(
    plane: LocalPlane,
    centre: { x: number; y: number },
    halfSizeM: number,
    signal?: AbortSignal,
  ): Promise<GroundLayer | null>;
  /** Box of the raster's extent, degrees. */
  readonly bounds: LonLatBox;
  /**
   * The part of the raster inside `box` for drawing a map: from the coarsest overview whose cells are not over `cellM`
   * metres, or null where the raster does not reach there. For the eye only; nothing is measured from it.
   */
  readForMap(box: LonLatBox, cellM: number, signal?: AbortSignal): Promise<MapGround | null>;
  close(): Promise<void>;
}

/** West, south, east and north in WGS 84 degrees. */
export interface LonLatBox {
  readonly west: number;
  readonly south: number;
  readonly east: number;
  readonly north: number;
}

/** Ground for a map: a grid and where a position falls on it, in fractional cell-centre indices. */
export interface MapGround {
  readonly grid: Grid;
  toIndex(position: LonLat): { readonly col: number; readonly row: number };
}

export type ReadGround = (
  sources: readonly ElevationSource[],
  plane: LocalPlane,
  centre: { x: number; y: number },
  halfSizeM: number,
  signal?: AbortSignal,
) => Promise<Ground>;
