import type { FeatureCollection } from 'geojson';
import { LngLatBounds, Map as MapView, setWorkerUrl } from 'maplibre-gl';
import workerUrl from 'maplibre-gl/dist/maplibre-gl-worker.mjs?worker&url';
import 'maplibre-gl/dist/maplibre-gl.css';
import './map.css';
import type { LonLat } from '../geo/index.ts';
import type { UnitSystem } from '../units/index.ts';
import type { MapDistrict } from './district.ts';
import { addFurniture } from './furniture.ts';
import { type GroundTiles, groundProtocol } from './ground-protocol.ts';
import type { MapInk } from './ink.ts';
import { studyOverlay } from './overlay.ts';
import { studyPoint } from './point.ts';
import { mapStyle } from './style/map-style.ts';
import { addSymbols } from './symbols.ts';

export interface MapOptions {
  readonly tiles: GroundTiles;
  readonly district: MapDistrict;
  readonly ink: MapInk;
  readonly units: UnitSystem;
  /** The point moves and has not been let go. */
  onMove(at: LonLat): void;
  /** A tap, a released point, or Enter. */
  onPlace(at: LonLat): void;
  /** A tap on a site. */
  onSite(id: string): void;
  /** The ground cannot be drawn; one sentence. */
  onProblem(sentence: string): void;
}

export interface MapHandle {
  setDistrict(district: MapDistrict): void;
  setInk(ink: MapInk): void;
  setUnits(units: UnitSystem): void;
  /** The point under study, null for none. */
  setPoint(at: LonLat | null): void;
  /** The study's lines; `stale` while they belong to an earlier place of the point. */
  setShapes(shapes: FeatureCollection | null, stale: boolean): void;
  /** Brings a place into view, near enough to see the road bench. */
  show(at: LonLat): void;
  /** Widens the view until a descent's end is in it too. */
  showWhole(at: LonLat, end: LonLat): void;
  remove(): void;
}

const SITE_ZOOM = 16.4;
/** What is to be seen keeps this far from the map's sides. */
const MARGIN_PX = 64;
/** A tap this near a site's ring means the site: half of 44 pixels. */
const SITE_TOUCH_PX = 22;
/** What a tile that left the view before it was drawn says; nobody need know. */
const abort = /abort|given up/i;

/** Draws the district in an element and listens to fingers, mouse and keys. North stays up: figures are read off it. */
export function mount(element: HTMLElement, options: MapOptions): MapHandle {
  setWorkerUrl(workerUrl);
  let { district, ink, units } = options;
  let issue = 1;
  const protocol = groundProtocol(options.tiles);
  const style = () =>
    mapStyle(district, { ground: protocol.groundUrl(issue), contours: protocol.contourUrl(issue, units) }, ink);
  const map = new MapView({
    container: element,
    style: style(),
    bounds: viewOf(district),
    fitBoundsOptions: { padding: 36 },
    maxZoom: 20,
    attributionControl: false,
    dragRotate: false,
    touchPitch: false,
    pitchWithRotate: false,
    fadeDuration: 0,
  });
  map.touchZoomRotate.disableRotation();
  map.keyboard.disableRotation();
  const canvas = map.getCanvas();
  canvas.setAttribute(
    'aria-label',
    'Map. Arrow keys move it, plus and minus zoom; Enter places the site at the cross.',
  );
  map.on('styledata', () => addSymbols(map, ink));
  map.on('error', ({ error }) => {
    if (!abort.test(error.message)) options.onProblem(error.message);
  });
  // Told on the element, for whoever waits to look at a whole picture.
  map.on('idle', () => element.setAttribute('data-drawn', 'yes'));
  for (const event of ['dataloading', 'movestart'] as const) {
    map.on(event, () => element.setAttribute('data-drawn', 'no'));
  }
  const furniture = addFurniture(map, units);
  furniture.setAttribution(district.attribution);
  const overlay = studyOverlay(map);
  const point = studyPoint(map, { onMove: options.onMove, onPlace: options.onPlace });

  map.on('click', ({ lngLat, point: pixel }) => {
    const site = district.sites.find(({ lon, lat }) => {
      const { x, y } = map.project([lon, lat]);
      return Math.hypot(x - pixel.x, y - pixel.y) <= SITE_TOUCH_PX;
    });
    if (site) options.onSite(site.id);
    else options.onPlace({ lon: lngLat.lng, lat: lngLat.lat });
  });
  canvas.addEventListener('keydown', (event) => {
    if (event.key !== 'Enter') return;
    const { lng, lat } = map.getCenter();
    options.onPlace({ lon: lng, lat });
  });

  return {
    setDistrict(next) {
      district = next;
      issue++;
      map.setStyle(style());
      map.fitBounds(viewOf(district), { padding: 36, animate: false });
      furniture.setAttribution(district.attribution);
    },
    setInk(next) {
      ink = next;
      map.setStyle(style());
    },
    setUnits(next) {
      units = next;
      map.setStyle(style());
      furniture.setUnits(units);
    },
    setPoint: (at) => point.set(at),
    setShapes(shapes, stale) {
      overlay.setShapes(shapes);
      overlay.setStale(stale);
    },
    show({ lon, lat }) {
      map.jumpTo({ center: [lon, lat], zoom: Math.max(map.getZoom(), SITE_ZOOM) });
    },
    showWhole(at, end) {
      const inner = map.project([end.lon, end.lat]);
      const { clientWidth, clientHeight } = element;
      const inside = (value: number, size: number): boolean => value > MARGIN_PX && value < size - MARGIN_PX;
      if (inside(inner.x, clientWidth) && inside(inner.y, clientHeight)) return;
      const box = new LngLatBounds([at.lon, at.lat], [at.lon, at.lat]).extend([end.lon, end.lat]);
      map.fitBounds(box, { padding: MARGIN_PX + 16, maxZoom: SITE_ZOOM, animate: false });
    },
    remove() {
      overlay.remove();
      point.remove();
      map.remove();
      protocol.remove();
    },
  };
}

function viewOf({ roadsBounds, elevationBounds }: MapDistrict): [number, number, number, number] {
  const { west, south, east, north } = roadsBounds ?? elevationBounds;
  return [west, south, east, north];
}
