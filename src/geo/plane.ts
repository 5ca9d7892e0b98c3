import proj4 from 'proj4';
import type { LocalPlane, LonLat } from './types.ts';

/** The local metric plane centred on a position; see `LocalPlane` for its accuracy. */
export function localPlane(origin: LonLat): LocalPlane {
  const projection = proj4(
    '+proj=longlat +datum=WGS84 +no_defs',
    `+proj=tmerc +lat_0=${origin.lat} +lon_0=${origin.lon} +k=1 +x_0=0 +y_0=0 +ellps=WGS84 +units=m +no_defs`,
  );
  return {
    origin,
    toLocal({ lon, lat }) {
      const [x, y] = projection.forward([lon, lat]);
      return { x, y };
    },
    toLonLat({ x, y }) {
      const [lon, lat] = projection.inverse([x, y]);
      return { lon, lat };
    },
  };
}
