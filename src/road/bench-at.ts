import type { Bench, BenchSide } from './bench-types.ts';
import { EDGE_KINDS, type EdgeKind } from './edge-kind.ts';
import { UNDER } from './structures.ts';

/** What one side of the bench is at element i. */
export const edgeKindAt = (side: BenchSide, i: number): EdgeKind => EDGE_KINDS[side.kind[i]];

/** The bench at one station; offsets as in `BenchSide`, null where there is none. */
export interface BenchStation {
  readonly stationM: number;
  readonly structure: boolean;
  /** Edge to edge, metres; null where an end is missing. */
  readonly widthM: number | null;
  readonly lineShiftM: number;
  readonly gradeDeg: number | null;
  readonly crossfallDeg: number | null;
  readonly left: BenchEnd;
  readonly right: BenchEnd;
}

export interface BenchEnd {
  readonly kind: EdgeKind;
  readonly edgeOffsetM: number | null;
  readonly sigmaM: number | null;
  readonly firmOffsetM: number | null;
  readonly usableOffsetM: number | null;
}

/** The bench at the whole metre nearest to a station, its first or last one past its ends. */
export function benchAt(bench: Bench, stationM: number): BenchStation {
  const i = Math.min(bench.count - 1, Math.max(0, Math.round(stationM) - bench.firstStationM));
  return {
    stationM: bench.firstStationM + i,
    structure: bench.under[i] === UNDER.structure,
    widthM: finite(bench.right.edgeOffsetM[i] - bench.left.edgeOffsetM[i]),
    lineShiftM: finite(bench.shiftM[i]) ?? 0,
    gradeDeg: finite(bench.gradeDeg[i]),
    crossfallDeg: finite(bench.crossfallDeg[i]),
    left: endAt(bench.left, i),
    right: endAt(bench.right, i),
  };
}

const endAt = (side: BenchSide, i: number): BenchEnd => ({
  kind: edgeKindAt(side, i),
  edgeOffsetM: finite(side.edgeOffsetM[i]),
  sigmaM: finite(side.sigmaM[i]),
  firmOffsetM: finite(side.firmOffsetM[i]),
  usableOffsetM: finite(side.usableOffsetM[i]),
});

const finite = (value: number): number | null => (Number.isFinite(value) ? value : null);
