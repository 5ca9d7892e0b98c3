import type { Bench, BenchSide } from '../road/index.ts';

/** The bench as closed rings of x, y pairs, metres: one ring for each stretch where both ends are known. */
export function benchOutline(bench: Bench): Float64Array[] {
  const rings: Float64Array[] = [];
  let from = 0;
  const known = (i: number): boolean => Number.isFinite(bench.left.edgeX[i]) && Number.isFinite(bench.right.edgeX[i]);
  for (let i = 0; i <= bench.count; i++) {
    if (i < bench.count && known(i)) continue;
    if (i - from > 1) rings.push(ring(bench, from, i));
    from = i + 1;
  }
  return rings;
}

function ring({ left, right }: Bench, from: number, to: number): Float64Array {
  const points: number[] = [];
  for (let i = from; i < to; i++) points.push(right.edgeX[i], right.edgeY[i]);
  for (let i = to - 1; i >= from; i--) points.push(left.edgeX[i], left.edgeY[i]);
  points.push(points[0], points[1]);
  return Float64Array.from(points);
}

/** The edge on one side as x, y pairs, metres: the unbroken run of known edge points that holds station index `at`. */
export function edgeLine(side: BenchSide, at: number): Float64Array {
  let from = at;
  let to = at;
  while (from > 0 && Number.isFinite(side.edgeX[from - 1])) from--;
  while (to < side.edgeX.length - 1 && Number.isFinite(side.edgeX[to + 1])) to++;
  const points: number[] = [];
  for (let i = from; i <= to; i++) points.push(side.edgeX[i], side.edgeY[i]);
  return Float64Array.from(points);
}
