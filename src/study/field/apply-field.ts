import { changedSince, type QuantityName, quantityNames } from '../../book/index.ts';
import type { LonLat } from '../../geo/index.ts';
import type { SightBothWays } from '../../road/index.ts';
import { isScreeningOnly } from '../../terrain/index.ts';
import { ok, type Result } from '../../units/index.ts';
import type { GroundWork } from '../work.ts';
import type { Computed } from './computed.ts';
import { computedValues, edgeOut } from './computed-values.ts';
import { checkedReadings, type FieldQuantity, fieldQuantity } from './field-value-work.ts';
import { measuredSteepness, movedSide } from './measured-bench.ts';
import { measuredDescent } from './measured-descent.ts';

/** Whose value in a study is made of the layouts, not of the ground. */
const ofLayouts: readonly QuantityName[] = ['edgeToAnchorM'];

/**
 * A ground work as the readings of the site have it: by the rule of the field, what worsens counts at once, what betters where the rule
 * is met. The same object where nothing was read. `path`: the places that the study stands on. Refuses an impossible reading.
 */
export function applyField(work: GroundWork, path: readonly LonLat[]): Result<GroundWork> {
  const { field, events = [] } = work.inputs;
  if (!field || field.measurements.length === 0) return ok(work);
  const checked = checkedReadings(field);
  if (!checked.ok) return checked;
  const notBefore = changedSince(path, events, null, null).sinceSurvey.at(-1)?.on ?? null;
  const computed = computedValues(work);
  const found = quantityNames
    .filter((name) => !ofLayouts.includes(name))
    .flatMap((name) => fieldQuantity(name, computed[name], field, notBefore, work.inputs.at) ?? []);
  const taken = (name: QuantityName): FieldQuantity | null =>
    found.find(({ quantity, counts }) => quantity === name && counts.how === 'measured' && counts.value !== null) ??
    null;
  const { side } = work;
  const descent =
    side.descent && measuredDescent(side.descent, (name) => known(taken(name)), isScreeningOnly(side.info));
  const measured = measuredRoad({ ...work, side: { ...side, descent } }, taken);
  return ok({ ...measured, sight: measuredSight(work.sight, taken), field: { quantities: found, notBefore } });
}

/** Nothing is planned on a reading of what was not computed. */
const known = (one: FieldQuantity | null): FieldQuantity | null => (one && isKnown(one.computed) ? one : null);
const isKnown = ({ value }: Computed): boolean => value !== null;

type Taken = (name: QuantityName) => FieldQuantity | null;

function measuredRoad(work: GroundWork, taken: Taken): GroundWork {
  let { bench } = work;
  const { i, side } = work;
  const { descent } = side;
  const grade = known(taken('gradeDeg'));
  const crossfall = known(taken('crossfallDeg'));
  const edge = known(taken('edgeOffsetM'));
  const width = known(taken('benchWidthM'));
  if (grade) bench = measuredSteepness(bench, 'gradeDeg', i, grade.counts.value!, grade.counts.betters);
  if (crossfall) bench = measuredSteepness(bench, 'crossfallDeg', i, crossfall.counts.value!, crossfall.counts.betters);
  const outM = edge ? edge.counts.value! - edgeOut(work)! : 0;
  if (edge) bench = movedSide(bench, side.side, i, outM, edge.sigma);
  if (width) {
    // The edge is held: what the width lacks is lacking behind.
    const now = bench.right.edgeOffsetM[i] - bench.left.edgeOffsetM[i];
    const byM = width.counts.value! - now;
    const helps = width.counts.betters ? byM > 0 : byM < 0;
    if (helps) bench = movedSide(bench, side.side === 'right' ? 'left' : 'right', i, byM, null);
  }
  // Above a patient point the edge is another one than was read: it is moved where that is worse.
  if (!edge || !descent || (edge.counts.betters && work.inputs.patient)) return { ...work, bench };
  const sign = side.side === 'right' ? 1 : -1;
  const start = {
    x: descent.line.start.x + sign * outM * bench.normalX[i],
    y: descent.line.start.y + sign * outM * bench.normalY[i],
  };
  // The slope goes with its edge; an edge that lies nearer leaves that much more to the patient.
  const moreM = Math.max(0, -outM);
  return {
    ...{ ...work, bench },
    side: {
      ...side,
      descent: {
        ...descent,
        line: { ...descent.line, start },
        groundLengthM: descent.groundLengthM + moreM,
        smoothedGroundLengthM: descent.smoothedGroundLengthM + moreM,
        rope: { ...descent.rope, lengthM: descent.rope.lengthM + moreM },
      },
    },
  };
}

function measuredSight(sight: SightBothWays | null, taken: Taken): SightBothWays | null {
  if (!sight) return null;
  const before = known(taken('sightBeforeM'));
  const after = known(taken('sightAfterM'));
  const seen = (own: SightBothWays['before'], read: FieldQuantity | null): SightBothWays['before'] =>
    read ? { ...own, distanceM: read.counts.value! } : own;
  return { before: seen(sight.before, before), after: seen(sight.after, after) };
}
