import { type Bench, edgeKindAt } from '../road/index.ts';
import { degrees, metres, metresOrNull } from './rounded.ts';
import type { StudyBench, StudyBenchStation } from './study.ts';

/** The contract's `bench` at station index `i` of a measured bench, with all its stations. */
export function benchPart(bench: Bench, i: number): StudyBench {
  const { stationM: _, ...here } = stationPart(bench, i);
  const width = bench.right.edgeOffsetM[i] - bench.left.edgeOffsetM[i];
  return {
    widthM: metresOrNull(width),
    ...here,
    gradeDeg: degrees(finiteOrZero(bench.gradeDeg[i])),
    crossfallDeg: degrees(finiteOrZero(bench.crossfallDeg[i])),
    stations: Array.from({ length: bench.count }, (_value, k) => stationPart(bench, k)),
  };
}

function stationPart({ firstStationM, left, right, shiftM }: Bench, i: number): StudyBenchStation {
  return {
    stationM: firstStationM + i,
    leftEdgeKind: edgeKindAt(left, i),
    rightEdgeKind: edgeKindAt(right, i),
    leftEdgeOffsetM: metresOrNull(left.edgeOffsetM[i]),
    rightEdgeOffsetM: metresOrNull(right.edgeOffsetM[i]),
    usableLeftOffsetM: metresOrNull(left.usableOffsetM[i]),
    usableRightOffsetM: metresOrNull(right.usableOffsetM[i]),
    lineShiftM: metres(finiteOrZero(shiftM[i])),
  };
}

const finiteOrZero = (value: number): number => (Number.isFinite(value) ? value : 0);
