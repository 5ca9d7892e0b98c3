import { classify, type MapFeature, type RoadNetwork, type RoadWay, type Tags } from '../../road/index.ts';
import type { MapItem } from './map-item.ts';

/**
 * Sorts mapped things into roads and features. In a file with no `highway` tag at all every untagged line is a road: such
 * files come from a district's own mapping, which knows no tags.
 */
export function toNetwork(items: readonly MapItem[]): RoadNetwork {
  const untaggedAreRoads = !items.some(({ tags }) => tags.highway !== undefined);
  const ways: RoadWay[] = [];
  const features: MapFeature[] = [];
  for (const { id, tags, shape, coordinates } of items) {
    const kind = classify(tags, shape) ?? (untaggedAreRoads && shape === 'line' && !isMapped(tags) ? 'road' : null);
    if (kind === null) continue;
    if (kind !== 'road') features.push({ id, kind, shape, coordinates, tags });
    else if (shape === 'line') ways.push({ id, name: tags.name ?? tags.ref ?? null, line: coordinates, tags });
  }
  return { ways, features };
}

/** Keys that say that a line is something else than a road. */
const mappedKeys = [
  ...['aeroway', 'barrier', 'boundary', 'building', 'communication', 'landuse', 'leisure', 'man_made', 'natural'],
  ...['pipeline', 'power', 'railway', 'route', 'waterway'],
];

const isMapped = (tags: Tags): boolean => mappedKeys.some((key) => tags[key] !== undefined);
