import { type Map as MapView, Marker } from 'maplibre-gl';
import type { LonLat } from '../geo/index.ts';
import { offsetBy } from './offset.ts';

/** Metres that an arrow key moves the point, and with Shift. */
const STEP_M = 1;
const LONG_STEP_M = 10;

export interface PointEvents {
  /** The point moves under a finger, a mouse or a key; the study should follow. */
  onMove(at: LonLat): void;
  /** The point was let go or placed. */
  onPlace(at: LonLat): void;
  /** A finger or a mouse takes hold of the point, or lets it go. */
  onHold?(held: boolean): void;
}

/** A point on the map: dragged by mouse or touch, moved by arrow keys, placed by Enter. */
export interface MapPoint {
  set(at: LonLat | null): void;
  remove(): void;
}

/** Adds a point to a map, hidden until it is set. `name` is its class, `label` what it is called and how keys move it. */
export function mapPoint(map: MapView, name: string, label: string, events: PointEvents): MapPoint {
  const element = document.createElement('button');
  element.type = 'button';
  element.className = name;
  element.append(document.createElement('span'));
  element.setAttribute('aria-label', `${label}. Arrow keys move it 1 metre, with Shift 10; Enter places it.`);
  const marker = new Marker({ element, draggable: true });
  let shown = false;
  let dragging = false;
  const here = (): LonLat => {
    const { lng, lat } = marker.getLngLat();
    return { lon: lng, lat };
  };
  marker.on('dragstart', () => {
    dragging = true;
    events.onHold?.(true);
  });
  marker.on('drag', () => events.onMove(here()));
  marker.on('dragend', () => {
    dragging = false;
    events.onPlace(here());
    events.onHold?.(false);
  });
  // A press on the point is not a tap on the map under it.
  element.addEventListener('click', (event) => event.stopPropagation());
  element.addEventListener('keydown', (event) => {
    const direction = arrows[event.key];
    if (event.key === 'Enter') events.onPlace(here());
    else if (direction) {
      const step = event.shiftKey ? LONG_STEP_M : STEP_M;
      const at = offsetBy(here(), direction[0] * step, direction[1] * step);
      marker.setLngLat([at.lon, at.lat]);
      keepInView(map, at);
      events.onMove(at);
    } else return;
    event.preventDefault();
    event.stopPropagation();
  });
  return {
    set(at) {
      if (dragging) return;
      if (!at) marker.remove();
      else {
        marker.setLngLat([at.lon, at.lat]);
        if (!shown) marker.addTo(map);
      }
      shown = at !== null;
    },
    remove: () => marker.remove(),
  };
}

const arrows: Readonly<Record<string, readonly [number, number]>> = {
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
};

function keepInView(map: MapView, { lon, lat }: LonLat): void {
  if (!map.getBounds().contains([lon, lat])) map.easeTo({ center: [lon, lat] });
}
