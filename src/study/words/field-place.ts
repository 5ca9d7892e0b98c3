import { localPlane } from '../../geo/index.ts';
import { azimuthGap, azimuthOf, compassWord, toRadians } from '../../units/index.ts';
import type { Study, StudyBenchStation, StudyLayout } from '../study.ts';

/** Under this grade nobody on the road sees which way is up, degrees (1 %). */
const LEVEL_DEG = 0.57;

/** Which way along the road a turned haul runs: "up the road", "down the road", or by compass where the road is level. */
export function alongWords({ bench }: Pick<Study, 'bench'>, { points }: StudyLayout): string {
  const { x, y } = localPlane(points.turn!).toLocal(points.anchor);
  const toward = azimuthOf(x, y);
  const station = nearest(bench!.stations, points.turn!);
  const withDrawing = azimuthGap(toward, station.azimuthDeg) < 90;
  const climbDeg = withDrawing ? bench!.gradeDeg : -bench!.gradeDeg;
  if (Math.abs(climbDeg) < LEVEL_DEG) return `${compassWord(toward)} along the road`;
  return climbDeg > 0 ? 'up the road' : 'down the road';
}

/** What a turned haul field lies on: a lane as seen from the site's edge, or the shoulder. */
export function fieldPlace({ bench, site }: Pick<Study, 'bench' | 'site'>, { points }: StudyLayout): string {
  const { widthM, lanes } = bench!.carriageway;
  const sign = site.side === 'right' ? 1 : -1;
  const outM = (sign * (fromMiddle(bench!.stations, points.turn!) + fromMiddle(bench!.stations, points.anchor))) / 2;
  const half = widthM / 2;
  if (outM >= half) return 'along the shoulder';
  if (outM <= -half) return 'along the far shoulder';
  if (lanes === 1) return 'along the road';
  if (outM >= half - widthM / lanes) return 'along the outer lane';
  return outM <= widthM / lanes - half ? 'along the inner lane' : 'along the middle of the road';
}

/** Offset of a point from the middle of the road, metres, to the right of the drawing. */
function fromMiddle(stations: readonly StudyBenchStation[], at: { lon: number; lat: number }): number {
  const station = nearest(stations, at);
  const { x, y } = localPlane(station).toLocal(at);
  const azimuth = toRadians(station.azimuthDeg);
  return x * Math.cos(azimuth) - y * Math.sin(azimuth) - station.lineShiftM;
}

function nearest(stations: readonly StudyBenchStation[], { lon, lat }: { lon: number; lat: number }) {
  const shrink = Math.cos(toRadians(lat));
  const gap = (station: StudyBenchStation): number => Math.hypot((station.lon - lon) * shrink, station.lat - lat);
  return stations.reduce((best, station) => (gap(station) < gap(best) ? station : best));
}
