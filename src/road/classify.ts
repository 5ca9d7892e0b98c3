import type { MapFeatureKind, Tags } from './network.ts';

/** What a mapped line, area or point is to this program; null where it is nothing that a study reads. */
export type MapClass = 'road' | MapFeatureKind | null;

const roadWords =
  /^(motorway|trunk|primary|secondary|tertiary|unclassified|residential|living_street|service|road|track)(_link)?$/;
const trailWords = /^(path|footway|bridleway|cycleway|steps|pedestrian)$/;
const barrierWords = /^(guard_rail|jersey_barrier|cable_barrier)$/;
const wallWords = /^(retaining_wall|wall|city_wall)$/;
const waterwayWords = /^(river|stream|canal|drain|ditch|riverbank|tidal_channel|fish_pass|rapids|waterfall)$/;

/** Reads what a feature is from its tags; `shape` decides what a point, a line and an area can be. */
export function classify(tags: Tags, shape: 'point' | 'line' | 'area'): MapClass {
  if (shape === 'point') return /^(pole|tower|portal)$/.test(tags.power ?? tags.man_made ?? '') ? 'pole' : null;
  const { highway } = tags;
  if (highway !== undefined && tags.area !== 'yes') {
    if (roadWords.test(highway)) return 'road';
    if (trailWords.test(highway)) return 'trail';
    return null;
  }
  if (barrierWords.test(tags.barrier ?? '')) return 'barrier';
  if (wallWords.test(tags.barrier ?? '')) return 'wall';
  if (tags.natural === 'cliff') return 'cliff';
  if (tags.man_made === 'embankment') return 'embankment';
  if (/^(line|minor_line)$/.test(tags.power ?? '') || tags.communication === 'line') return 'wire';
  return isWater(tags) ? 'water' : null;
}

/** Water that lies open: a stream in a culvert under the road is no water at the surface. */
function isWater(tags: Tags): boolean {
  if (tags.tunnel !== undefined && tags.tunnel !== 'no') return false;
  if (waterwayWords.test(tags.waterway ?? '')) return true;
  return /^(water|coastline|bay)$/.test(tags.natural ?? '') || /^(reservoir|basin)$/.test(tags.landuse ?? '');
}
