import { changedSince, type EventRecord } from '../book/index.ts';
import type { LonLat } from '../geo/index.ts';
import type { Ground, GroundLayer } from '../terrain/index.ts';

/**
 * The ground with every layer marked whose heights are older than an event that the path touches, or may be: such a layer is for
 * screening only. The same object where nothing is older. `path`: WGS 84 degrees, the places that the study stands on.
 */
export function outdatedGround(ground: Ground, events: readonly EventRecord[], path: readonly LonLat[]): Ground {
  let changed = false;
  const layers = ground.layers.map((layer): GroundLayer => {
    const event = changedSince(path, events, null, layer.info.collectedOn).sinceElevation.at(-1);
    if (!event || layer.info.outdatedBy) return layer;
    changed = true;
    return { ...layer, info: { ...layer.info, outdatedBy: { name: event.name, on: event.on } } };
  });
  return changed ? { ...ground, layers } : ground;
}
