import { localPlane } from '../../geo/index.ts';
import type { Study, StudyBenchStation } from '../../study/index.ts';

type Corner = [lon: number, lat: number];

/** The road's edge on the site's side within `halfM` of the site along the road; fewer than two corners where it was not found. */
export const edgeLine = (study: Study, halfM: number): Corner[] =>
  near(study, halfM).flatMap((station) => {
    const offset = edgeOf(study, station);
    return offset === null ? [] : [beside(station, offset)];
  });

/** The ground from the middle of the road to that edge, as a ring; null where the edge was not found. */
export function shoulderRing(study: Study, halfM: number): Corner[] | null {
  const stations = near(study, halfM).filter((station) => edgeOf(study, station) !== null);
  if (stations.length < 2) return null;
  const outer = stations.map((station) => beside(station, edgeOf(study, station)!));
  const inner = stations.map((station) => beside(station, station.lineShiftM)).reverse();
  return [...outer, ...inner, outer[0]!];
}

const near = ({ bench, site }: Study, halfM: number): StudyBenchStation[] =>
  (bench?.stations ?? []).filter(({ stationM }) => Math.abs(stationM - site.road.stationM) <= halfM);

const edgeOf = ({ site }: Study, station: StudyBenchStation): number | null =>
  site.side === 'left' ? station.leftEdgeOffsetM : station.rightEdgeOffsetM;

/** A position `offsetM` to the right of the road's drawing. */
function beside({ lon, lat, azimuthDeg }: StudyBenchStation, offsetM: number): Corner {
  const right = ((azimuthDeg + 90) * Math.PI) / 180;
  const at = localPlane({ lon, lat }).toLonLat({ x: offsetM * Math.sin(right), y: offsetM * Math.cos(right) });
  return [at.lon, at.lat];
}
