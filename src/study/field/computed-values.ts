import type { QuantityName } from '../../book/index.ts';
import type { GroundWork } from '../work.ts';
import { type Computed, Z95 } from './computed.ts';

/**
 * What the ground work found of every quantity that can be read on site. Where a thing is a hazard that was looked for and not
 * found (a step, a slope above), that counts as 0: a reading of one is worse. Clear road counts as endless.
 */
export function computedValues(work: GroundWork): Record<QuantityName, Computed> {
  const { bench, i, side, sight } = work;
  const { descent } = side;
  const own = side.side === 'right' ? bench.right : bench.left;
  const far = side.side === 'right' ? bench.left : bench.right;
  const plain = (value: number | null | undefined, sigma: number | null = null): Computed => ({
    value: value != null && Number.isFinite(value) ? value : null,
    stretchM: null,
    sigma,
    range: null,
  });
  const angle = descent?.angle ?? null;
  const outM = edgeOut(work);
  const slack = outM === null ? 0 : Z95 * own.sigmaM[i];
  return {
    angleDeg: angle
      ? {
          value: angle.governingDeg,
          stretchM: angle.stretchM,
          sigma: angle.governingSigmaDeg,
          range: angle.rangeDeg,
        }
      : plain(null),
    lipAngleDeg: plain(descent?.lipAngleDeg),
    groundLengthM: plain(descent?.groundLengthM),
    dropM: plain(descent?.dropM, side.info.verticalRmseM),
    stepHeightM: plain(descent ? Math.max(0, ...descent.steps.map(({ heightM }) => heightM)) : null),
    slopeAboveDeg: plain(far.above[i]?.angleDeg ?? 0),
    gradeDeg: plain(Math.abs(bench.gradeDeg[i])),
    crossfallDeg: plain(Math.abs(bench.crossfallDeg[i])),
    edgeOffsetM:
      outM === null
        ? plain(null)
        : { ...plain(outM, own.sigmaM[i]), range: [Math.max(0, outM - slack), outM + slack] as const },
    edgeToAnchorM: plain(null),
    benchWidthM: plain(bench.right.edgeOffsetM[i] - bench.left.edgeOffsetM[i]),
    clearBeforeM: endless,
    clearAfterM: endless,
    sightBeforeM: plain(sight?.before.distanceM),
    sightAfterM: plain(sight?.after.distanceM),
  };
}

/** Where a road is clear nothing is computed: any reading makes it shorter. */
const endless: Computed = { value: Number.POSITIVE_INFINITY, stretchM: null, sigma: null, range: null };

/** From the middle of the road found to the edge that drops, metres; null where nothing drops. */
export function edgeOut({ bench, i, side }: GroundWork): number | null {
  if (!side.descent) return null;
  const own = side.side === 'right' ? bench.right : bench.left;
  const outM = Math.abs(own.edgeOffsetM[i] - bench.shiftM[i]);
  return Number.isFinite(outM) ? outM : null;
}
