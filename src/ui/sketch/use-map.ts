import { type RefObject, useEffect, useRef, useState } from 'react';
import type { MapHandle } from '../../map/index.ts';
import { UserError } from '../../units/index.ts';
import { useActions } from '../desk-context.ts';
import { readMapInk } from '../map-ink.ts';
import { useBasemap } from '../own/basemap-store.ts';
import { ruleNamed, useDistrict, useGiven, useMapGone, usePlace, useReading } from '../state/index.ts';
import { followStores } from './follow-stores.ts';
import { mapEvents } from './map-events.ts';
import { keepRoadsideStopped, roadsideStopped } from './roadside-stopped.ts';
import { toMapDistrict } from './to-map.ts';

/** A map that a device took away comes back by itself after so long, milliseconds. */
const BACK_MS = 500;
/** Taken away again so soon after, it waits to be asked for: a driver that fails at each try would be at it for ever. */
const SOON_MS = 30_000;

const TAKEN = 'This device took the drawing of the map away.';

export interface MapTries {
  /** Another one for every try: a map needs an element that no other has used. */
  readonly attempt: number;
  again(): void;
}

/**
 * Mounts the district's map in an element once its part of the program is loaded, and keeps it in step with the desk;
 * `useMapGone` says why there is none.
 */
export function useMap(element: RefObject<HTMLDivElement | null>, handle: RefObject<MapHandle | null>): MapTries {
  const { desk, workers } = useActions();
  const stop = useRef<(() => void) | null>(null);
  const [attempt, setAttempt] = useState(0);
  const district = useDistrict((state) => state.district);
  const lostAtMs = useRef(-SOON_MS);
  const coming = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  const again = (): void => setAttempt((before) => before + 1);

  const remove = (): void => {
    clearTimeout(coming.current);
    stop.current?.();
    handle.current?.remove();
    stop.current = null;
    handle.current = null;
  };
  const lost = (): void => {
    remove();
    const atMs = performance.now();
    const soon = atMs - lostAtMs.current < SOON_MS;
    lostAtMs.current = atMs;
    useMapGone.setState({ gone: soon ? TAKEN : `${TAKEN} It comes back in a moment.` });
    if (!soon) coming.current = setTimeout(again, BACK_MS);
  };

  // biome-ignore lint/correctness/useExhaustiveDependencies: another attempt is another element; `lost` uses what stays.
  useEffect(() => {
    if (!district || !element.current) return;
    if (handle.current) {
      handle.current.setDistrict(toMapDistrict(district));
      return;
    }
    let gone = false;
    import('../../map/index.ts')
      .then(({ mount }) => {
        if (gone || !element.current) return;
        const { view } = usePlace.getState();
        const mounted = mount(element.current, {
          district: toMapDistrict(useDistrict.getState().district ?? district),
          ink: readMapInk(),
          units: useReading.getState().units,
          rule: ruleNamed(useGiven.getState().ruleName),
          tiles: {
            ground: (tile, signal) => workers.map.call('groundTile', tile, signal),
            contours: (tile, inUnits, signal) => workers.map.call('contourTile', { ...tile, units: inUnits }, signal),
          },
          roadside: {
            stretches: (box, signal) => workers.map.call('stretches', box, signal),
            read: (key, rule, signal) => workers.map.call('roadside', { key, rule }, signal),
            stopped: roadsideStopped(),
            onStopped: keepRoadsideStopped,
          },
          onLost: lost,
          ...mapEvents(desk),
        });
        handle.current = mounted;
        useMapGone.setState({ gone: null });
        if (view) mounted.setLook({ at: view.at, zoom: view.zoom, bearingDeg: 0, pitchDeg: 0 });
        const { at, zoom } = mounted.look();
        desk.lookedAt({ at, zoom });
        stop.current = followStores(mounted);
        const { basemap } = useBasemap.getState();
        if (basemap) void mounted.setBasemap(basemap);
      })
      .catch((error: unknown) => {
        if (!gone) useMapGone.setState({ gone: whyGone(error) });
      });
    return () => {
      gone = true;
    };
  }, [district, desk, workers, attempt]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: once, when the page goes.
  useEffect(() => remove, []);
  return { attempt, again };
}

function whyGone(error: unknown): string {
  if (error instanceof UserError) return error.message;
  return `The map could not be loaded (${error instanceof Error ? error.message : String(error)}).`;
}
