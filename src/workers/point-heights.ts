import { type LonLat, localPlane } from '../geo/index.ts';
import { type ElevationSource, readGround } from '../io/index.ts';
import { heightAt } from '../terrain/index.ts';

/** Ground read around each point, metres to each side. */
const WINDOW_M = 12;

/** Ground height at each point, metres, from the finest raster that has one; null where none has. */
export async function pointHeights(
  sources: readonly ElevationSource[],
  points: readonly LonLat[],
  signal?: AbortSignal,
): Promise<(number | null)[]> {
  return Promise.all(
    points.map(async (at) => {
      const ground = await readGround(sources, localPlane(at), { x: 0, y: 0 }, WINDOW_M, signal);
      const height = heightAt(ground, 0, 0);
      return Number.isFinite(height) ? height : null;
    }),
  );
}
