import type { Map as MapView, PointLike } from 'maplibre-gl';
import type { MapSite } from './district.ts';
import type { MapOptions } from './options.ts';
import { RING_ZOOM } from './style/site-layers.ts';

/** A tap this near a site's ring means the site: half of 44 pixels. */
const SITE_TOUCH_PX = 22;
/** Marks stand closer to one another than sites do. */
const MARK_TOUCH_PX = 14;
/** From afar, where sites are dots beside each other, only a near one is meant. */
const DOT_TOUCH_PX = 10;

/** Tells taps, keys, the mouse and rest to whoever mounted the map. */
export function listen(
  map: MapView,
  element: HTMLElement,
  options: MapOptions,
  sites: { all(): readonly MapSite[]; settled(): boolean },
): void {
  const canvas = map.getCanvas();
  canvas.setAttribute(
    'aria-label',
    'Map. Arrow keys move it, plus and minus zoom; Enter places the site at the cross.',
  );
  map.on('click', ({ lngLat, point }) => {
    const reach = map.getZoom() < RING_ZOOM ? DOT_TOUCH_PX : SITE_TOUCH_PX;
    const site = nearestSite(map, sites.all(), point, reach);
    const mark = site || !options.onMark ? null : markAt(map, point);
    const at = { lon: lngLat.lng, lat: lngLat.lat };
    if (site) options.onSite(site.id, at);
    else if (mark) options.onMark?.(mark, at);
    else options.onPlace(at);
  });
  canvas.addEventListener('keydown', (event) => {
    // With Shift it ends a line or an area, which is no corner more.
    if (event.key !== 'Enter' || event.shiftKey) return;
    const { lng, lat } = map.getCenter();
    options.onPlace({ lon: lng, lat });
  });
  const { onHover, onLook } = options;
  if (onHover) {
    map.on('mousemove', ({ lngLat }) => onHover({ lon: lngLat.lng, lat: lngLat.lat }));
    map.on('mouseout', () => onHover(null));
  }
  if (onLook) {
    map.on('moveend', () => {
      const { lng, lat } = map.getCenter();
      const at = { lon: lng, lat };
      onLook({ at, zoom: map.getZoom(), bearingDeg: map.getBearing(), pitchDeg: map.getPitch() });
    });
  }
  // Told on the element, for whoever waits to look at a whole picture.
  map.on('idle', () => {
    if (sites.settled()) element.setAttribute('data-drawn', 'yes');
  });
  for (const event of ['dataloading', 'movestart'] as const) {
    map.on(event, () => element.setAttribute('data-drawn', 'no'));
  }
}

/** The site nearest to a pixel, within reach of a finger. */
function nearestSite(
  map: MapView,
  sites: readonly MapSite[],
  pixel: { x: number; y: number },
  reach: number,
): MapSite | null {
  let best: MapSite | null = null;
  let least = reach;
  for (const site of sites) {
    const { x, y } = map.project([site.lon, site.lat]);
    const away = Math.hypot(x - pixel.x, y - pixel.y);
    if (away > least) continue;
    least = away;
    best = site;
  }
  return best;
}

function markAt(map: MapView, { x, y }: { x: number; y: number }): string | null {
  const box: [PointLike, PointLike] = [
    [x - MARK_TOUCH_PX, y - MARK_TOUCH_PX],
    [x + MARK_TOUCH_PX, y + MARK_TOUCH_PX],
  ];
  const [found] = map.queryRenderedFeatures(box, { layers: ['mark', 'mark-fill', 'mark-line'] });
  return (found?.properties.id as string | undefined) ?? null;
}
