import type { LonLat } from '../../geo/index.ts';
import { UserError } from '../../units/index.ts';

const why: Readonly<Record<number, string>> = {
  1: 'This device does not let the page know where it is; allow it in the browser, or type a position.',
  2: 'This device does not know where it is; type a road and mile, a site or a position.',
  3: 'This device did not find its position in time; try again under open sky, or type a position.',
};

/** Where the device is, and the radius of the circle that it gives, metres. Throws `UserError` with one sentence. */
export function locate(): Promise<{ readonly at: LonLat; readonly errorM: number }> {
  return new Promise((resolve, reject) => {
    if (!navigator.geolocation) return reject(new UserError('no-position', why[2]!));
    navigator.geolocation.getCurrentPosition(
      ({ coords: { longitude: lon, latitude: lat, accuracy } }) => resolve({ at: { lon, lat }, errorM: accuracy }),
      ({ code }) => reject(new UserError('no-position', why[code] ?? why[2]!)),
      { enableHighAccuracy: true, timeout: 15_000, maximumAge: 10_000 },
    );
  });
}
