import { geodesicM, type LonLat, localPlane } from '../geo/index.ts';
import { type ElevationSource, readGround } from '../io/index.ts';
import { heightAt } from '../terrain/index.ts';
import { azimuthOf } from '../units/index.ts';

/** What lies between two positions: metres in plan, true degrees, metres up; null where the ground of an end is not known. */
export interface Measured {
  readonly distanceM: number;
  readonly bearingDeg: number;
  readonly riseM: number | null;
}

/** Ground read around each end, metres to each side. */
const WINDOW_M = 12;

/** Measures from one position to another: geodesic length, bearing at the first, rise from the finest raster at each end. */
export async function measure(
  sources: readonly ElevationSource[],
  [from, to]: readonly [LonLat, LonLat],
  signal?: AbortSignal,
): Promise<Measured> {
  const heights = await Promise.all(
    [from, to].map(async (at) => {
      const ground = await readGround(sources, localPlane(at), { x: 0, y: 0 }, WINDOW_M, signal);
      return heightAt(ground, 0, 0);
    }),
  );
  const { x, y } = localPlane(from).toLocal(to);
  const riseM = heights[1]! - heights[0]!;
  return {
    distanceM: geodesicM(from, to),
    bearingDeg: azimuthOf(x, y),
    riseM: Number.isFinite(riseM) ? riseM : null,
  };
}
