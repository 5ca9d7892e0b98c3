import type { Bench } from '../road/index.ts';
import { type Ground, looksLikeSurfaceModel } from '../terrain/index.ts';

/** How far along the road, either way, is looked at for trees and roofs, metres. */
const LOOK_M = 60;

/**
 * The ground with a doubt taken the cautious way: where the finest raster does not say what it is and trees or roofs seem
 * to stand in it beside the road, it counts as a surface model. Whoever knows better states the terrain kind.
 */
export function withLikelyKind(ground: Ground, bench: Bench, i: number): { ground: Ground; doubted: boolean } {
  const finest = ground.layers[0];
  if (finest?.info.kind !== 'unknown') return { ground, doubted: false };
  const line: number[] = [];
  for (let k = Math.max(0, i - LOOK_M); k <= Math.min(bench.count - 1, i + LOOK_M); k++)
    line.push(bench.x[k], bench.y[k]);
  if (!looksLikeSurfaceModel(ground, line)) return { ground, doubted: false };
  const taken = { ...finest, info: { ...finest.info, kind: 'surface' as const } };
  return { ground: { ...ground, layers: [taken, ...ground.layers.slice(1)] }, doubted: true };
}
