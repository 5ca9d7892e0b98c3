import { LngLatBounds, type Map as MapView } from 'maplibre-gl';
import type { LonLat } from '../geo/index.ts';
import type { MapDistrict } from './district.ts';
import type { MapLook } from './options.ts';
import { PHONE_BELOW_PX } from './phone-size.ts';
import { READ_FROM_ZOOM } from './roadside.ts';

const SITE_ZOOM = 16.4;
/** Near enough to read a layout: an engine is as long as a thumb is wide. */
const LAYOUT_ZOOM = 18.2;
/** What is to be seen keeps this far from the map's sides. */
const MARGIN_PX = 64;
/** What the flag covers at the top of the map. */
const FLAG_PX = { desk: 150, phone: 216 };
const RELIEF_PITCH_DEG = 58;

/** Where a map looks. */
export interface Camera {
  showDistrict(district: MapDistrict): void;
  show(at: LonLat): void;
  showWhole(at: LonLat, rest: readonly LonLat[], near: boolean): void;
  /** Tilts the map and lets hands turn it; or lays it flat, north up, and keeps it so. */
  setRelief(on: boolean): void;
  look(): MapLook;
  setLook(look: MapLook): void;
}

/** The camera of a map in `element`; every move is made at once, nothing flies. */
export function cameraOf(map: MapView, element: HTMLElement): Camera {
  map.touchZoomRotate.disableRotation();
  map.keyboard.disableRotation();
  return {
    showDistrict({ roadsBounds, elevationBounds }) {
      const { west, south, east, north } = roadsBounds ?? elevationBounds;
      const box: [number, number, number, number] = [west, south, east, north];
      const roomy = map.cameraForBounds(box, { padding: roomForNames(element) });
      const close = map.cameraForBounds(box, { padding: 36 });
      const reads = (look: typeof close): boolean => Number(look?.zoom) >= READ_FROM_ZOOM;
      // Rather names cut at the sides than a first view from so far that its roadsides are no longer read.
      const look = reads(close) && !reads(roomy) ? close : (roomy ?? close);
      if (look) map.jumpTo(look);
    },
    show({ lon, lat }) {
      map.jumpTo({ center: [lon, lat], zoom: Math.max(map.getZoom(), SITE_ZOOM) });
    },
    showWhole(at, rest, near) {
      const { clientWidth, clientHeight } = element;
      const inside = (value: number, size: number): boolean => value > MARGIN_PX && value < size - MARGIN_PX;
      const inView = ({ lon, lat }: LonLat): boolean => {
        const { x, y } = map.project([lon, lat]);
        return inside(x, clientWidth) && inside(y, clientHeight);
      };
      if (!near && rest.every(inView)) return;
      const box = new LngLatBounds([at.lon, at.lat], [at.lon, at.lat]);
      for (const { lon, lat } of rest) box.extend([lon, lat]);
      const side = MARGIN_PX + 16;
      // From near the point would come to lie under the flag that says what it is.
      const flag = clientWidth < PHONE_BELOW_PX ? FLAG_PX.phone : FLAG_PX.desk;
      const top = near ? Math.min(flag, clientHeight / 2) : side;
      const maxZoom = near ? LAYOUT_ZOOM : SITE_ZOOM;
      map.fitBounds(box, { padding: { top, right: side, bottom: side, left: side }, maxZoom, animate: false });
    },
    setRelief(on) {
      const hands = on ? 'enable' : 'disable';
      map.dragRotate[hands]();
      map.touchPitch[hands]();
      map.touchZoomRotate[on ? 'enableRotation' : 'disableRotation']();
      map.keyboard[on ? 'enableRotation' : 'disableRotation']();
      map.jumpTo(on ? { pitch: RELIEF_PITCH_DEG } : { pitch: 0, bearing: 0 });
    },
    look() {
      const { lng, lat } = map.getCenter();
      const at = { lon: lng, lat };
      return { at, zoom: map.getZoom(), bearingDeg: map.getBearing(), pitchDeg: map.getPitch() };
    },
    setLook({ at, zoom, bearingDeg, pitchDeg }) {
      map.jumpTo({ center: [at.lon, at.lat], zoom, bearing: bearingDeg, pitch: pitchDeg });
    },
  };
}

/** What the district keeps from the map's sides, pixels: names stand beside its roads, the stencil or its keys over the map. */
function roomForNames({ clientWidth, clientHeight }: HTMLElement) {
  const isPhone = clientWidth < PHONE_BELOW_PX;
  return {
    left: isPhone ? 60 : Math.min(110, clientWidth / 8),
    right: isPhone ? 92 : Math.min(120, clientWidth / 8),
    top: Math.min(60, clientHeight / 8),
    bottom: isPhone ? 40 : Math.min(140, clientHeight / 6),
  };
}
