import type { LocalPlane } from '../../../src/geo/index.ts';
import { type Bench, edgeKindAt } from '../../../src/road/index.ts';
import { hardPlaces, type KeyStation, stationWords } from './key.ts';
import { mean, quantile, shareOf, worstRun } from './statistics.ts';

/** One side of one station: the truth beside what the tool told. */
export interface EdgeCase {
  readonly station: KeyStation;
  /** Offset told less true offset, outward positive, metres; NaN where no end of the bench is told. */
  readonly errorM: number;
  readonly sigmaM: number;
  readonly told: string;
  /** Element of the bench where they were compared. */
  readonly at: number;
}

/** A run of stations is judged by this many together. */
const RUN = 10;

/** Compares the bench at the station where a key's edge lies. */
export function edgeCase(bench: Bench, plane: LocalPlane, station: KeyStation): EdgeCase | null {
  const sign = station.side === 'right' ? 1 : -1;
  const own = station.side === 'right' ? bench.right : bench.left;
  const near = Math.round(station.drawnStationM) - bench.firstStationM;
  if (near < 0 || near >= bench.count) return null;
  if (!station.edge) return { station, errorM: Number.NaN, sigmaM: Number.NaN, told: edgeKindAt(own, near), at: near };
  const point = plane.toLocal(station.edge);
  const i = stationOf(bench, near, point);
  const offset = (point.x - bench.x[i]) * bench.normalX[i] + (point.y - bench.y[i]) * bench.normalY[i];
  return {
    station,
    errorM: sign * (own.edgeOffsetM[i] - offset),
    sigmaM: own.sigmaM[i],
    told: edgeKindAt(own, i),
    at: i,
  };
}

/** The station whose section passes nearest to a point, within 15 stations of `near`. */
function stationOf(bench: Bench, near: number, point: { x: number; y: number }): number {
  let best = near;
  let least = Number.POSITIVE_INFINITY;
  for (let i = Math.max(0, near - 15); i <= Math.min(bench.count - 1, near + 15); i++) {
    const along = Math.abs((point.y - bench.y[i]) * bench.normalX[i] - (point.x - bench.x[i]) * bench.normalY[i]);
    if (along < least) {
      least = along;
      best = i;
    }
  }
  return best;
}

/** Prints the edge part of the report. */
export function reportEdges(cases: readonly EdgeCase[]): void {
  const drops = cases.filter((c) => c.station.kind === 'drop');
  const groups: [string, (c: EdgeCase) => boolean][] = [
    ['easy', (c) => c.station.place === 'easy'],
    ['hard', (c) => hardPlaces.has(c.station.place)],
  ];
  console.log(
    '\nEdge offset error, metres, drop side: median | 95 % | worst run of 10 (worst shorter piece) | band holds the truth | stations',
  );
  for (const [name, test] of groups) {
    const all = drops.filter(test);
    line(name, all);
    for (const road of new Set(all.map((c) => c.station.road))) {
      line(
        `  ${name}, ${road}`,
        all.filter((c) => c.station.road === road),
      );
    }
    for (const place of name === 'hard' ? hardPlaces : []) {
      line(
        `  ${place}`,
        all.filter((c) => c.station.place === place),
      );
    }
  }
  const others = new Set(drops.map((c) => c.station.place).filter((p) => p !== 'easy' && !hardPlaces.has(p)));
  console.log('Places left out of the pooled figures:');
  for (const place of others)
    line(
      `  ${place}`,
      drops.filter((c) => c.station.place === place),
    );

  const told = drops.filter((c) => c.station.place === 'easy' || hardPlaces.has(c.station.place));
  const missed = told.filter((c) => c.told !== 'drop');
  console.log(`Drop edges missed: ${missed.length} of ${told.length}${stationWords(missed.map((c) => c.station))}`);
  const level = cases.filter(
    (c) => (c.station.kind === 'flat' || c.station.kind === 'cut') && c.station.place === 'easy',
  );
  const invented = level.filter((c) => c.told === 'drop');
  console.log(
    `Drops told on flat ground or in a cut: ${invented.length} of ${level.length}${stationWords(invented.map((c) => c.station))}`,
  );
}

const worstOf = (runs: readonly number[]): string => (runs.length > 0 ? Math.max(...runs).toFixed(2) : 'none');

function line(name: string, cases: readonly EdgeCase[]): void {
  const found = cases.filter((c) => Number.isFinite(c.errorM));
  if (found.length === 0) return;
  const absolute = found.map((c) => Math.abs(c.errorM));
  const held = shareOf(found, (c) => Math.abs(c.errorM) <= 1.645 * c.sigmaM);
  const runs = groupRuns(found).map((run) => run.map((c) => c.errorM));
  const whole = runs.filter((run) => run.length >= RUN).map((run) => worstRun(run, RUN));
  const pieces = runs.filter((run) => run.length < RUN).map((run) => worstRun(run, run.length));
  console.log(
    `${name.padEnd(26)} ${quantile(absolute, 0.5).toFixed(3)} | ${quantile(absolute, 0.95).toFixed(2)} | ${worstOf(whole)} (${worstOf(pieces)}) | ${(held * 100).toFixed(1)} % | ${found.length} (bias ${mean(found.map((c) => c.errorM)).toFixed(3)})`,
  );
}

/** Cases of one side of one road whose stations follow each other. */
function groupRuns(cases: readonly EdgeCase[]): EdgeCase[][] {
  const runs: EdgeCase[][] = [];
  for (const c of cases) {
    const last = runs.at(-1)?.at(-1)?.station;
    const follows =
      last && last.road === c.station.road && last.side === c.station.side && c.station.index - last.index <= 2;
    if (follows) runs.at(-1)!.push(c);
    else runs.push([c]);
  }
  return runs;
}
