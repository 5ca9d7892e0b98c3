import type { Map as MapView } from 'maplibre-gl';
import type { LonLat } from '../geo/index.ts';
import { arrowStep } from './arrow-keys.ts';
import type { SpotShape } from './layout-shapes.ts';
import { offsetBy } from './offset.ts';

/** Where a person wants an apparatus: the middle of its outline and the heading of its cab end, true degrees. */
export interface SpotWish {
  readonly id: string;
  readonly at: LonLat;
  readonly headingDeg: number;
}

export interface SpotEvents {
  /** A spot moves under a finger, a mouse or a key. */
  onSpotMove?(wish: SpotWish): void;
  /** The spot was let go. */
  onSpotPlace?(wish: SpotWish): void;
  /** A finger or a mouse begins to drag a spot, or lets it go. */
  onHold?(held: boolean): void;
}

/** Lets spots of the overlay be dragged and nudged. */
export interface SpotDrag {
  listen(group: SVGElement, spot: SpotShape): void;
  /** The shape as it is under the finger: what the study says of it may still be on its way. */
  shown(spot: SpotShape): SpotShape;
}

const NUDGE_M = 0.5;
const TURN_DEG = 5;
/** A press that moves less than this is no drag, pixels. */
const SLACK_PX = 3;

/** Makes spots draggable; `redraw` is called when one moves under the finger. */
export function dragSpot(map: MapView, events: SpotEvents, redraw: () => void): SpotDrag {
  let held: { spot: SpotShape; x: number; y: number; dx: number; dy: number; moved: boolean } | null = null;
  const canvas = map.getCanvasContainer();

  const wish = (): SpotWish => {
    const { spot, dx, dy } = held!;
    const { x, y } = map.project([spot.at.lon, spot.at.lat]);
    const { lng, lat } = map.unproject([x + dx, y + dy]);
    return { id: spot.id, at: { lon: lng, lat }, headingDeg: spot.headingDeg };
  };
  const onMove = (event: PointerEvent): void => {
    if (!held) return;
    held.dx = event.clientX - held.x;
    held.dy = event.clientY - held.y;
    if (!held.moved) {
      if (Math.hypot(held.dx, held.dy) <= SLACK_PX) return;
      held.moved = true;
      events.onHold?.(true);
    }
    redraw();
    events.onSpotMove?.(wish());
  };
  const onUp = (): void => {
    if (held?.moved) {
      events.onSpotPlace?.(wish());
      events.onHold?.(false);
    }
    held = null;
    removeEventListener('pointermove', onMove);
    removeEventListener('pointerup', onUp);
    removeEventListener('pointercancel', onUp);
  };

  return {
    listen(group, spot) {
      // A press on a spot is neither a tap on the map nor the beginning of a pan.
      for (const type of ['mousedown', 'touchstart', 'click', 'dblclick'] as const) {
        group.addEventListener(type, (event) => event.stopPropagation());
      }
      group.addEventListener('pointerdown', (event) => {
        // A second finger takes the place of the first.
        if (held?.moved) events.onHold?.(false);
        held = { spot, x: event.clientX, y: event.clientY, dx: 0, dy: 0, moved: false };
        addEventListener('pointermove', onMove);
        addEventListener('pointerup', onUp);
        addEventListener('pointercancel', onUp);
      });
      group.addEventListener('keydown', (event) => {
        const step = arrowStep(event.key);
        const turn = event.key === '[' ? -TURN_DEG : event.key === ']' ? TURN_DEG : 0;
        if (!step && turn === 0) return;
        const at = step ? offsetBy(spot.at, step[0] * NUDGE_M, step[1] * NUDGE_M) : spot.at;
        events.onSpotPlace?.({ id: spot.id, at, headingDeg: (spot.headingDeg + turn + 360) % 360 });
        event.preventDefault();
        event.stopPropagation();
      });
    },
    shown(spot) {
      if (held?.spot.id !== spot.id || !held.moved || !canvas.isConnected) return spot;
      const to = wish().at;
      const shift = (place: LonLat): LonLat => ({
        lon: place.lon + to.lon - spot.at.lon,
        lat: place.lat + to.lat - spot.at.lat,
      });
      return { ...spot, at: to, outline: spot.outline.map(shift), cab: [shift(spot.cab[0]), shift(spot.cab[1])] };
    },
  };
}
