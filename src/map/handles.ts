import type { Map as MapView } from 'maplibre-gl';
import type { LonLat } from '../geo/index.ts';
import { type MapPoint, mapPoint } from './point.ts';

/** A corner of the thing in hand, or the middle between two where a new corner can be drawn out. */
export interface HandlePlace {
  readonly id: string;
  /** What it is called, as "barrier, corner 2 of 5". */
  readonly words: string;
  readonly at: LonLat;
  readonly between?: boolean;
}

export interface HandleEvents {
  /** A handle moves under a finger, a mouse or a key. */
  onHandleMove?(id: string, at: LonLat): void;
  /** It was let go. */
  onHandlePlace?(id: string, at: LonLat): void;
  /** Delete was pressed on it. */
  onHandleDelete?(id: string): void;
}

/** Handles of the thing in hand. */
export interface MapHandles {
  /** Shows these; one that was there keeps its element, so that a press or the focus is not torn off it. */
  set(places: readonly HandlePlace[]): void;
  remove(): void;
}

/** Adds handles to a map, none at first. `onHold` is told when one is taken hold of or let go. */
export function mapHandles(map: MapView, events: HandleEvents, onHold: (held: boolean) => void): MapHandles {
  const shown = new Map<string, { words: string; point: MapPoint }>();
  const drop = (id: string): void => {
    shown.get(id)?.point.remove();
    shown.delete(id);
  };
  return {
    set(places) {
      for (const id of [...shown.keys()]) {
        if (!places.some((place) => place.id === id)) drop(id);
      }
      for (const { id, words, at, between } of places) {
        const old = shown.get(id);
        old?.point.rename(words);
        const point =
          old?.point ??
          mapPoint(map, between ? 'mark-handle between' : 'mark-handle', words, {
            onMove: (to) => events.onHandleMove?.(id, to),
            onPlace: (to) => events.onHandlePlace?.(id, to),
            ...(!between && { onDelete: () => events.onHandleDelete?.(id) }),
            onHold,
            placesOnLeave: true,
          });
        shown.set(id, { words, point });
        point.set(at);
      }
    },
    remove() {
      for (const id of [...shown.keys()]) drop(id);
    },
  };
}
