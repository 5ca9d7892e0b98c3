import type { FeatureCollection } from 'geojson';
import type { GeoJSONSource, Map as MapView } from 'maplibre-gl';
import type { Box, Pixel } from './place-labels.ts';

/** The map's own names keep off what is drawn over the map: its labels, apparatus and fields. */
export interface LabelRoom {
  /** Something was drawn anew or elsewhere. */
  touch(): void;
  data(): FeatureCollection;
  remove(): void;
}

export interface Covered {
  readonly boxes: readonly Box[];
  readonly lines: readonly (readonly [Pixel, Pixel])[];
}

const nothing: FeatureCollection = { type: 'FeatureCollection', features: [] };
/** Pixels between the places that take room; each takes somewhat more. */
const EVERY_PX = 10;
/** A drawing that changes under a finger is looked at once it has kept still this long, milliseconds. */
const STILL_MS = 250;

/** Tells the map, at rest, which places are covered; `covered` looks at the screen as it is now. */
export function labelRoom(map: MapView, covered: () => Covered): LabelRoom {
  let told: FeatureCollection = nothing;
  let waiting: ReturnType<typeof setTimeout> | undefined;
  let [drawing, seen] = [0, ''];
  const tell = (): void => {
    // Places hold on the ground while the map is panned, and change with its scale and turn.
    const now = [drawing, map.getZoom().toFixed(3), map.getBearing().toFixed(1), map.getPitch().toFixed(1)].join(' ');
    const source = map.getSource<GeoJSONSource>('label-room');
    if (now === seen || !source || map.isMoving()) return;
    seen = now;
    const next = roomOf(map, covered());
    if (next.features.length === 0 && told.features.length === 0) return;
    told = next;
    source.setData(next);
  };
  map.on('idle', tell);
  return {
    touch() {
      drawing++;
      clearTimeout(waiting);
      waiting = setTimeout(tell, STILL_MS);
    },
    data: () => told,
    remove() {
      clearTimeout(waiting);
      map.off('idle', tell);
    },
  };
}

function roomOf(map: MapView, { boxes, lines }: Covered): FeatureCollection {
  const middles = boxes.map(({ left, top, right, bottom }): readonly [Pixel, Pixel] => [
    { x: left, y: (top + bottom) / 2 },
    { x: right, y: (top + bottom) / 2 },
  ]);
  const places = [...middles, ...lines].flatMap(along);
  return {
    type: 'FeatureCollection',
    features: places.map(({ x, y }) => {
      const { lng, lat } = map.unproject([x, y]);
      return { type: 'Feature', properties: {}, geometry: { type: 'Point', coordinates: [lng, lat] } };
    }),
  };
}

function along([a, b]: readonly [Pixel, Pixel]): Pixel[] {
  const steps = Math.max(1, Math.ceil(Math.hypot(b.x - a.x, b.y - a.y) / EVERY_PX));
  return Array.from({ length: steps + 1 }, (_, i) => ({
    x: a.x + (i / steps) * (b.x - a.x),
    y: a.y + (i / steps) * (b.y - a.y),
  }));
}
