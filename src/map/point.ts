import { type Map as MapView, Marker } from 'maplibre-gl';
import type { LonLat } from '../geo/index.ts';

/** Metres that an arrow key moves the point, and with Shift. */
const STEP_M = 1;
const LONG_STEP_M = 10;
const METRES_PER_DEGREE = 111_320;

export interface PointEvents {
  /** The point moves under a finger, a mouse or a key; the study should follow. */
  onMove(at: LonLat): void;
  /** The point was let go or placed. */
  onPlace(at: LonLat): void;
}

/** The point a study is asked for: dragged by mouse or touch, moved by arrow keys, placed by Enter. */
export interface StudyPoint {
  set(at: LonLat | null): void;
  remove(): void;
}

/** Adds the point to a map, hidden until it is set. */
export function studyPoint(map: MapView, events: PointEvents): StudyPoint {
  const element = document.createElement('button');
  element.type = 'button';
  element.className = 'study-point';
  element.append(document.createElement('span'));
  element.setAttribute('aria-label', 'Site point. Arrow keys move it 1 metre, with Shift 10; Enter places it.');
  const marker = new Marker({ element, draggable: true });
  let shown = false;
  let dragging = false;
  const here = (): LonLat => {
    const { lng, lat } = marker.getLngLat();
    return { lon: lng, lat };
  };
  marker.on('dragstart', () => {
    dragging = true;
  });
  marker.on('drag', () => events.onMove(here()));
  marker.on('dragend', () => {
    dragging = false;
    events.onPlace(here());
  });
  // A press on the point is not a tap on the map under it.
  element.addEventListener('click', (event) => event.stopPropagation());
  element.addEventListener('keydown', (event) => {
    const direction = arrows[event.key];
    if (event.key === 'Enter') events.onPlace(here());
    else if (direction) {
      const at = moved(here(), direction, event.shiftKey ? LONG_STEP_M : STEP_M);
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

/** A position moved by so many metres east and north; good to a hand's breadth over 10 m. */
function moved({ lon, lat }: LonLat, [east, north]: readonly [number, number], metres: number): LonLat {
  const perLon = METRES_PER_DEGREE * Math.cos((lat * Math.PI) / 180);
  return { lon: lon + (east * metres) / perLon, lat: lat + (north * metres) / METRES_PER_DEGREE };
}

function keepInView(map: MapView, { lon, lat }: LonLat): void {
  if (!map.getBounds().contains([lon, lat])) map.easeTo({ center: [lon, lat] });
}
