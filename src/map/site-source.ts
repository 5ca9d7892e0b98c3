import type { GeoJSONSource, Map as MapView } from 'maplibre-gl';
import type { MapSite } from './district.ts';
import type { MapInk } from './ink.ts';
import type { NameSides } from './name-sides.ts';
import { siteFeatures } from './site-features.ts';
import { BEYOND_ZOOM, nameZoom, paddings } from './style/site-layers.ts';

/** Keeps the sites on the map, each name on the side where the map does not cut it. */
export interface SiteSource {
  /** Draws the sites as they are, where they are others than those drawn. */
  show(): void;
  /** The sites for a whole new style, which draws them. */
  forStyle(): readonly MapSite[];
  /** Whether every name in view stands on its side. */
  settled(): boolean;
  remove(): void;
}

export function siteSource(
  map: MapView,
  sides: NameSides,
  now: () => { readonly sites: readonly MapSite[]; readonly ink: MapInk },
): SiteSource {
  /** The sites as they are on the map now; a source that is told the same again would draw everything anew. */
  let drawn = '';
  let turned = false;
  let atRest = 0;
  const show = (): void => {
    const { sites, ink } = now();
    if (sides.look(sites, ink)) turned = true;
    const features = siteFeatures(sides.put(sites));
    const text = JSON.stringify(features);
    const source = map.getSource<GeoJSONSource>('sites');
    if (!source) return;
    // Turned to and fro: nothing is drawn, so only a repaint tells that the map is at rest.
    if (turned && text === drawn) map.triggerRepaint();
    turned = false;
    if (text === drawn) return;
    drawn = text;
    source.setData(features);
    map.setLayerZoomRange('site-name', nameZoom(sites.length), BEYOND_ZOOM);
    const { name, ring } = paddings(sites.length);
    map.setLayoutProperty('site-name', 'text-padding', name);
    map.setLayoutProperty('site', 'icon-padding', ring);
  };
  const moves = (): void => cancelAnimationFrame(atRest);
  map.on('movestart', moves);
  map.on('idle', () => {
    const { sites, ink } = now();
    if (sides.look(sites, ink)) turned = true;
    if (!turned) return;
    // In a pan by steps the map stands still after each of them: it is at rest where none follows by the next frame.
    cancelAnimationFrame(atRest);
    atRest = requestAnimationFrame(show);
  });
  return {
    show,
    forStyle() {
      const { sites, ink } = now();
      sides.look(sites, ink);
      const placed = sides.put(sites);
      drawn = JSON.stringify(siteFeatures(placed));
      turned = false;
      return placed;
    },
    settled: () => !turned,
    remove: moves,
  };
}
