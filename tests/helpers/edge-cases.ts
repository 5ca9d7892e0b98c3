import { EDGE_KINDS, type EdgeKind } from '../../src/road/index.ts';
import { keyOffsets } from './edge-errors.ts';
import { edgeKey } from './edge-key.ts';
import { benchOf } from './road-bench.ts';
import { makeRoadGround, type RoadSpec } from './road-ground.ts';

/** One side of one station of a made road: what the key says beside what was told. */
export interface EdgeCase {
  readonly side: -1 | 1;
  readonly stationM: number;
  readonly truth: EdgeKind;
  readonly told: EdgeKind;
  /** Offset told less the key's, outward positive, metres; NaN where either has none. */
  readonly errorM: number;
  readonly sigmaM: number;
  /** False within 12 stations of a place where the key turns from one kind to another: the edge has no one place there. */
  readonly defined: boolean;
}

const TURN_STATIONS = 12;

/** Both sides of every station of a made road, in order along it, the left side first. */
export function edgeCases(spec: RoadSpec): EdgeCase[] {
  const road = makeRoadGround(spec);
  const bench = benchOf(road);
  return ([-1, 1] as const).flatMap((side) => {
    const own = side < 0 ? bench.left : bench.right;
    const key = edgeKey(road, side);
    const offsets = keyOffsets(bench, key);
    const truth = Array.from(offsets, (_, i) => key.kind[nearest(i)]);
    return Array.from(offsets, (offset, i) => ({
      side,
      stationM: bench.firstStationM + i,
      truth: truth[i],
      told: EDGE_KINDS[own.kind[i]],
      errorM: side * (own.edgeOffsetM[i] - offset),
      sigmaM: own.sigmaM[i],
      defined: truth.slice(Math.max(0, i - TURN_STATIONS), i + TURN_STATIONS + 1).every((kind) => kind === truth[i]),
    }));
  });

  /** Station of the true line nearest to a station of the drawn one. */
  function nearest(i: number): number {
    let best = 0;
    let least = Number.POSITIVE_INFINITY;
    for (let k = 0; k < road.trueX.length; k++) {
      const d = (road.trueX[k] - bench.x[i]) ** 2 + (road.trueY[k] - bench.y[i]) ** 2;
      if (d < least) [least, best] = [d, k];
    }
    return best;
  }
}

/** Absolute errors of the cases told as the key has them, NaN elsewhere, in order along the road. */
export const absoluteErrors = (cases: readonly EdgeCase[]): number[] =>
  cases.map((c) => (c.defined && c.truth === c.told ? Math.abs(c.errorM) : Number.NaN));

/** Share of the cases whose truth lies inside the printed 90 % band, ± 1.645 sigma. */
export function shareInBand(cases: readonly EdgeCase[]): number {
  const known = cases.filter((c) => c.defined && c.truth === c.told && Number.isFinite(c.errorM));
  return known.filter((c) => Math.abs(c.errorM) <= 1.645 * c.sigmaM).length / known.length;
}
