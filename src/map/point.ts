import { type Map as MapView, Marker } from 'maplibre-gl';
import type { LonLat } from '../geo/index.ts';
import { arrowStep } from './arrow-keys.ts';
import { offsetBy } from './offset.ts';

/** Metres that an arrow key moves the point, and with Shift. */
const STEP_M = 1;
const LONG_STEP_M = 10;

export interface PointEvents {
  /** The point moves under a finger, a mouse or a key; the study should follow. */
  onMove(at: LonLat): void;
  /** The point was let go or placed. */
  onPlace(at: LonLat): void;
  /** Delete was pressed on it; without it the key does nothing here. */
  onDelete?(): void;
  /** Moved by keys and left without Enter, it is placed where it lies. */
  readonly placesOnLeave?: boolean;
  /** A finger or a mouse takes hold of the point, or lets it go. */
  onHold?(held: boolean): void;
}

/** A point on the map: dragged by mouse or touch, moved by arrow keys, placed by Enter. */
export interface MapPoint {
  set(at: LonLat | null): void;
  /** Calls it otherwise. */
  rename(label: string): void;
  remove(): void;
}

/** Adds a point to a map, hidden until it is set. `name` is its class, `label` what it is called and how keys move it. */
export function mapPoint(map: MapView, name: string, label: string, events: PointEvents): MapPoint {
  const element = document.createElement('button');
  element.type = 'button';
  element.className = name;
  element.append(document.createElement('span'));
  const keys = `Arrow keys move it 1 metre, with Shift 10; Enter places it${events.onDelete ? '; Delete takes it away' : ''}.`;
  const rename = (words: string): void => element.setAttribute('aria-label', `${words}. ${keys}`);
  rename(label);
  const marker = new Marker({ element, draggable: true });
  let shown = false;
  let dragging = false;
  let nudged = false;
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
    const direction = arrowStep(event.key);
    if (event.key === 'Enter') {
      nudged = false;
      events.onPlace(here());
    } else if (event.key === 'Delete' && events.onDelete) {
      nudged = false;
      events.onDelete();
    } else if (direction) {
      nudged = true;
      const step = event.shiftKey ? LONG_STEP_M : STEP_M;
      const at = offsetBy(here(), direction[0] * step, direction[1] * step);
      marker.setLngLat([at.lon, at.lat]);
      keepInView(map, at);
      events.onMove(at);
    } else return;
    event.preventDefault();
    event.stopPropagation();
  });
  if (events.placesOnLeave) {
    element.addEventListener('blur', () => {
      if (nudged && shown) events.onPlace(here());
      nudged = false;
    });
  }
  return {
    rename,
    set(at) {
      if (dragging || (nudged && at && events.placesOnLeave)) return;
      if (!at) marker.remove();
      else {
        marker.setLngLat([at.lon, at.lat]);
        if (!shown) marker.addTo(map);
      }
      shown = at !== null;
    },
    remove() {
      shown = false;
      marker.remove();
    },
  };
}

function keepInView(map: MapView, { lon, lat }: LonLat): void {
  if (!map.getBounds().contains([lon, lat])) map.easeTo({ center: [lon, lat] });
}
