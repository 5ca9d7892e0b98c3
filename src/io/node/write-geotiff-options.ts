/** What a written raster says of itself. */
export interface GeoTiffOptions {
  /** EPSG code of the projected horizontal CRS, metres; grid coordinates are in it. */
  readonly epsg: number;
  /** EPSG code of the vertical CRS, metres; left out, the file still states that heights are metres. */
  readonly verticalEpsg?: number;
  /** Written where the grid is NaN. */
  readonly noData: number;
  /** Items of the GDAL metadata: name to text. */
  readonly metadata?: Readonly<Record<string, string>>;
  /** TIFF date, 'YYYY:MM:DD HH:MM:SS'. */
  readonly dateTime?: string;
  /** Tile side in cells, a multiple of 16 (256 by default). */
  readonly tileSize?: number;
  /** Smallest overview's longer side, cells; Infinity for none (256 by default). */
  readonly smallestOverview?: number;
  /** Deflate level, 1 to 9 (4 by default). */
  readonly level?: number;
}
