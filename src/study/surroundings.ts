import type { Position } from 'geojson';
import type { Mark } from '../book/index.ts';
import type { Area, Band, MarkedDrop, Surroundings } from '../descent/index.ts';
import type { LocalPlane } from '../geo/index.ts';
import { lengthTagM, type MapFeature, type RoadNetwork, readRoadTags } from '../road/index.ts';
import { lineNear } from './near.ts';

/** Half width of a mapped trail and of a stream drawn as a line, metres (common practice, no source). */
const TRAIL_HALF_M = 0.75;
const STREAM_HALF_M = 1.5;
/** Nothing farther from the site than this is met by a descent of 300 m or its fall line, metres. */
const REACH_M = 420;

/**
 * What a descent may meet, in local metres: the other roads, trails and water of the network, the own road's bench (so
 * that its lower leg is found), and marked or mapped walls, cliffs, steps and water. `ownWays` are ids of the ways whose
 * bench is measured: their line stands aside for the measured outline.
 */
export function surroundingsOf(
  network: RoadNetwork,
  marks: readonly Mark[],
  plane: LocalPlane,
  ownBench: readonly Float64Array[],
  ownWays: ReadonlySet<string>,
): Surroundings {
  const bands: Band[] = [];
  const areas: Area[] = ownBench.map((ring) => ({ kind: 'road', ring }));
  const drops: MarkedDrop[] = [];
  for (const way of network.ways) {
    if (ownWays.has(way.id) || !lineNear(way.line, plane.origin, REACH_M)) continue;
    const line = toLocal(way.line, plane);
    const traits = readRoadTags(way.tags);
    if (traits.tunnel) continue;
    bands.push({ kind: 'road', line, halfWidthM: traits.carriageway.valueM / 2 });
  }
  for (const feature of network.features) addFeature(feature, plane, bands, areas, drops);
  for (const mark of marks) addMark(mark, plane, bands, areas, drops);
  return { bands, areas, drops };
}

function addFeature(feature: MapFeature, plane: LocalPlane, bands: Band[], areas: Area[], drops: MarkedDrop[]): void {
  const { kind, shape, coordinates, tags } = feature;
  if (!lineNear(coordinates, plane.origin, REACH_M)) return;
  const line = toLocal(coordinates, plane);
  if (kind === 'water') {
    if (shape === 'area') areas.push({ kind: 'water', ring: line });
    else bands.push({ kind: 'water', line, halfWidthM: (lengthTagM(tags.width) ?? 2 * STREAM_HALF_M) / 2 });
  } else if (kind === 'trail') {
    bands.push({ kind: 'trail', line, halfWidthM: (lengthTagM(tags.width) ?? 2 * TRAIL_HALF_M) / 2 });
  } else if (kind === 'wall' || kind === 'cliff') {
    drops.push({ source: 'map', line, heightM: lengthTagM(tags.height) });
  }
}

function addMark(mark: Mark, plane: LocalPlane, bands: Band[], areas: Area[], drops: MarkedDrop[]): void {
  const { geometry, kind } = mark;
  if (kind !== 'water' && kind !== 'wall' && kind !== 'step') return;
  const positions = markLine(mark);
  if (!positions || !lineNear(positions, plane.origin, REACH_M)) return;
  const line = toLocal(positions, plane);
  if (kind !== 'water') drops.push({ source: 'mark', line, heightM: mark.heightM });
  else if (geometry.type === 'Polygon') areas.push({ kind: 'water', ring: line });
  else bands.push({ kind: 'water', line, halfWidthM: STREAM_HALF_M });
}

/** A mark's point, line or outer ring as lon, lat pairs; null for other geometries. */
export function markLine({ geometry }: Pick<Mark, 'geometry'>): Float64Array | null {
  const positions: Position[] | null =
    geometry.type === 'Point'
      ? [geometry.coordinates]
      : geometry.type === 'LineString'
        ? geometry.coordinates
        : geometry.type === 'Polygon'
          ? geometry.coordinates[0]!
          : null;
  return positions ? Float64Array.from(positions.flatMap(([lon, lat]) => [lon!, lat!])) : null;
}

/** Lon, lat pairs in degrees to x, y pairs in metres, stride 2. */
export function toLocal(lonLat: Float64Array, plane: LocalPlane): Float64Array {
  const out = new Float64Array(lonLat.length);
  for (let i = 0; i + 1 < lonLat.length; i += 2) {
    const { x, y } = plane.toLocal({ lon: lonLat[i]!, lat: lonLat[i + 1]! });
    out[i] = x;
    out[i + 1] = y;
  }
  return out;
}
