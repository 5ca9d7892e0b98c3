import { type Bench, type BenchSide, defaultSetbacks } from '../../road/index.ts';

/**
 * How far along the road a reading speaks for the bench, metres either way: a worse one in full and then fading out, a better one for
 * the place itself (common practice, no source).
 */
const WORSE_M = 15;
const WORSE_FADES_M = 40;
const BETTER_M = 3;
const BETTER_FADES_M = 6;

/** Share of a change that holds so far from where it was read. */
function shareAt(awayM: number, betters: boolean): number {
  const [full, fades] = betters ? [BETTER_M, BETTER_FADES_M] : [WORSE_M, WORSE_FADES_M];
  return Math.min(1, Math.max(0, (fades - awayM) / (fades - full)));
}

/**
 * One end of the bench moved by so many metres, outward positive, at element `at` and with a fading share beside it; never past the
 * middle of the road. Usable and firm offsets never stay outside of the moved edge.
 */
export function movedSide(
  bench: Bench,
  side: 'left' | 'right',
  at: number,
  outwardM: number,
  sigmaM: number | null,
): Bench {
  const sign = side === 'right' ? 1 : -1;
  const from = bench[side];
  const to: BenchSide = {
    ...from,
    edgeOffsetM: from.edgeOffsetM.slice(),
    sigmaM: from.sigmaM.slice(),
    firmOffsetM: from.firmOffsetM.slice(),
    usableOffsetM: from.usableOffsetM.slice(),
    edgeX: from.edgeX.slice(),
    edgeY: from.edgeY.slice(),
  };
  const drops = (k: number): number => (from.kind[k] === 3 ? defaultSetbacks.toeM : defaultSetbacks.edgeM);
  for (let k = 0; k < bench.count; k++) {
    const share = shareAt(Math.abs(k - at), outwardM > 0);
    const before = sign * from.edgeOffsetM[k];
    if (share === 0 || !Number.isFinite(before)) continue;
    const middle = sign * bench.shiftM[k];
    const after = Math.max(Number.isFinite(middle) ? middle : 0, before + share * outwardM);
    const moveM = after - before;
    to.edgeOffsetM[k] = sign * after;
    if (sigmaM !== null) to.sigmaM[k] = share === 1 ? sigmaM : Math.max(sigmaM, from.sigmaM[k]);
    to.edgeX[k] += sign * moveM * bench.normalX[k];
    to.edgeY[k] += sign * moveM * bench.normalY[k];
    to.firmOffsetM[k] = sign * follow(sign * from.firmOffsetM[k], before, after, 0);
    to.usableOffsetM[k] = sign * follow(sign * from.usableOffsetM[k], before, after, drops(k));
  }
  return { ...bench, [side]: to };
}

/** An offset inside of an edge that moves: it goes along outward only where the edge alone set it, inward wherever it must. */
function follow(offset: number, before: number, after: number, setbackM: number): number {
  if (after < before) return Math.min(offset, Math.max(0, after - setbackM));
  return before - setbackM - offset < 0.02 ? Math.max(offset, after - setbackM) : offset;
}

/** Grade or crossfall at element `at` and beside it made as steep as was read, degrees, each in its own direction. */
export function measuredSteepness(
  bench: Bench,
  which: 'gradeDeg' | 'crossfallDeg',
  at: number,
  valueDeg: number,
  betters: boolean,
): Bench {
  const here = bench[which][at];
  const changed = bench[which].map((deg, k) => {
    const share = shareAt(Math.abs(k - at), betters);
    if (share === 0 || !Number.isFinite(deg)) return deg;
    const sign = Math.sign(deg) || Math.sign(here) || 1;
    const size = Math.abs(deg) + share * (valueDeg - Math.abs(here));
    return sign * (betters ? Math.max(0, Math.min(Math.abs(deg), size)) : Math.max(Math.abs(deg), size));
  });
  return { ...bench, [which]: changed };
}
