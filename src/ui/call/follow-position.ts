import type { LonLat } from '../../geo/index.ts';

/** Where the device is, how far off that may be, metres, and where it moves to, true degrees; null where it stands or does not say. */
export interface DevicePosition {
  readonly at: LonLat;
  readonly errorM: number;
  readonly headingDeg: number | null;
}

/** Slower than this a heading is noise, metres a second: a walk. */
const MOVING_MS = 2;
/** A position is taken up no oftener, milliseconds: each asks the worker. */
const EVERY_MS = 3000;

/** Whether the device says where it is without a question, only after one, or not at all. */
export async function mayLocate(): Promise<'yes' | 'ask' | 'no'> {
  if (!navigator.geolocation || !navigator.permissions) return 'no';
  const { state } = await navigator.permissions.query({ name: 'geolocation' }).catch(() => ({ state: 'denied' }));
  return state === 'granted' ? 'yes' : state === 'prompt' ? 'ask' : 'no';
}

/** Follows the device until the returned function is called. `lost`: it cannot say where it is. */
export function followPosition(hear: (position: DevicePosition) => void, lost: () => void): () => void {
  let next = 0;
  const watch = navigator.geolocation.watchPosition(
    ({ coords: { longitude: lon, latitude: lat, accuracy, heading, speed } }) => {
      const now = performance.now();
      if (now < next) return;
      next = now + EVERY_MS;
      const moving = heading !== null && !Number.isNaN(heading) && (speed ?? MOVING_MS) >= MOVING_MS;
      hear({ at: { lon, lat }, errorM: accuracy, headingDeg: moving ? heading : null });
    },
    lost,
    { enableHighAccuracy: true, timeout: 30_000, maximumAge: 5000 },
  );
  return () => navigator.geolocation.clearWatch(watch);
}
