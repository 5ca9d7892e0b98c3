import type { LayerSpecification, SourceSpecification } from 'maplibre-gl';

/**
 * An open map to lie under the own one: any MapLibre style address; a raster tile address with {z}, {x}, {y} and whose data
 * it shows; or a PMTiles file from this machine, which is read by parts and needs no network.
 */
export type Basemap =
  | { readonly kind: 'style'; readonly url: string }
  | { readonly kind: 'raster'; readonly url: string; readonly attribution: string; readonly maxZoom?: number }
  | { readonly kind: 'file'; readonly file: File; readonly attribution?: string };

/** A basemap made ready to be put into the map's style. */
export interface BasemapParts {
  readonly sources: Record<string, SourceSpecification>;
  readonly layers: readonly LayerSpecification[];
  /** Address of its icons, null where it has none. */
  readonly sprite: string | null;
  /** Whose data it shows, as far as it says; the sources may say more once they are read. */
  readonly attribution: string;
}

/** What every source and layer of a basemap is called by, so that none has the name of an own one. */
export const BASE = 'base:';
