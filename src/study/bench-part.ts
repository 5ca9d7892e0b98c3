import type { LocalPlane } from '../geo/index.ts';
import { type Bench, edgeKindAt, type RoadTraits } from '../road/index.ts';
import { laneCount, roadAzimuthDeg } from '../spots/index.ts';
import { positionOf } from './descent-part.ts';
import { degrees, metres, metresOrNull } from './rounded.ts';
import type { StudyBench, StudyBenchStation } from './study.ts';

/** The contract's `bench` at station index `i` of a measured bench, with all its stations. */
export function benchPart(bench: Bench, i: number, traits: RoadTraits, plane: LocalPlane): StudyBench {
  const { stationM: _s, lon: _x, lat: _y, azimuthDeg: _a, ...here } = stationPart(bench, i, plane);
  const width = bench.right.edgeOffsetM[i] - bench.left.edgeOffsetM[i];
  return {
    widthM: metresOrNull(width),
    ...here,
    gradeDeg: degrees(finiteOrZero(bench.gradeDeg[i])),
    crossfallDeg: degrees(finiteOrZero(bench.crossfallDeg[i])),
    carriageway: {
      widthM: metres(traits.carriageway.valueM),
      lanes: laneCount(traits),
      how: traits.carriageway.how,
    },
    stations: Array.from({ length: bench.count }, (_value, k) => stationPart(bench, k, plane)),
  };
}

function stationPart(bench: Bench, i: number, plane: LocalPlane): StudyBenchStation {
  const { firstStationM, left, right, shiftM } = bench;
  return {
    stationM: firstStationM + i,
    ...positionOf(plane, bench.x[i], bench.y[i]),
    azimuthDeg: degrees(roadAzimuthDeg(bench, i)),
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
