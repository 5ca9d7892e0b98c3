import type { Bench, BenchSide } from './bench-types.ts';

/** `count` stations of a bench from element `from`; what is said about it is left to the caller. */
export function trimBench(bench: Bench, from: number, count: number): Bench {
  const part = <T extends { slice(a: number, b: number): T }>(values: T): T => values.slice(from, from + count);
  return {
    ...bench,
    firstStationM: bench.firstStationM + from,
    count,
    x: part(bench.x),
    y: part(bench.y),
    normalX: part(bench.normalX),
    normalY: part(bench.normalY),
    left: trimSide(bench.left, from, count),
    right: trimSide(bench.right, from, count),
    shiftM: part(bench.shiftM),
    heightM: part(bench.heightM),
    gradeDeg: part(bench.gradeDeg),
    crossfallDeg: part(bench.crossfallDeg),
    under: part(bench.under),
  };
}

function trimSide(side: BenchSide, from: number, count: number): BenchSide {
  const entries = Object.entries(side).map(([key, values]) => [key, values.slice(from, from + count)]);
  return Object.fromEntries(entries) as BenchSide;
}
