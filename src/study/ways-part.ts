import type { Rates } from '../book/index.ts';
import type { Crossing, Descent } from '../descent/index.ts';
import type { ForceCheck } from '../rigging/index.ts';
import { roadAt } from '../road/index.ts';
import { findWays, kitArrivals, type Layout, type LowerTo, type Way } from '../spots/index.ts';
import type { StudyInputs } from './inputs.ts';
import { metres } from './rounded.ts';
import type { StudyClosure, StudyWay } from './study.ts';
import type { GroundWork } from './work.ts';

/** The ways to end the job of a site, the leading one first. */
export function waysPart(
  work: GroundWork,
  descent: Descent,
  layouts: readonly Layout[],
  closure: StudyClosure | null,
  inputs: StudyInputs,
): StudyWay[] {
  const { resources, conditions, patients, units } = inputs;
  const { angle } = descent;
  const layout = layouts[0] ?? null;
  if (!angle) return [];
  const ways = findWays({
    raise: layout && {
      ropeM: Math.max(layout.haul.ropeM.main, layout.haul.ropeM.belay, layout.haul.ropeM.haul ?? 0),
      ropeReaches: layout.fits.mutualAid.fit === 'yes',
      people: layout.people.leastRaise,
      minutes: layout.minutes,
    },
    lowerRunM: layouts.find(holdsLowering)?.run.belayRunM ?? null,
    carryRunM: layouts.find(holdsBelay)?.run.belayRunM ?? (layout ? null : runToSpot(work, descent, resources.rates)),
    slope: {
      planLow: angle.planAs === 'low',
      step: descent.steps.length > 0,
      lipChangeDeg: descent.lipAngleDeg,
      angleHighDeg: angle.rangeDeg[1],
      groundM: descent.groundLengthM,
      ropeLineM: descent.rope.lengthM,
    },
    crossings: crossingsToReach(work, descent),
    arrivals: resources.arrivals,
    kits: kitArrivals(resources.arrivals, resources.kits),
    alternatingLane: closure?.kind === 'one lane in turn',
    rates: resources.rates,
    ...{ conditions, patients, units },
  });
  return ways.map(wayPart);
}

function wayPart(
  { kind, ropeM, people, shown, meets, bearers, endsAtVehicle, allowed, why }: Way,
  i: number,
): StudyWay {
  return {
    kind,
    ropeM: metres(ropeM),
    people: { count: people.count, atMin: people.atMin },
    minutes: { from: shown?.from ?? null, to: shown?.to ?? null },
    meets,
    bearers,
    reachedBy: endsAtVehicle ? 'vehicle' : 'people',
    allowed,
    rank: i + 1,
    why: [...why],
  };
}

const belayHolds = ({ at, ok }: ForceCheck): boolean => at !== 'belay anchor' || ok !== 'no';
const holdsBelay = ({ forces }: Layout): boolean => forces.every(belayHolds);
/** Nothing is hauled: only what is held and the belay must hold. */
const holdsLowering = ({ forces }: Layout): boolean =>
  forces.every(
    (check) => belayHolds(check) && (!check.at.endsWith(', held') || check.kind === 'part' || check.ok !== 'no'),
  );

/**
 * From the edge to the far end of the nearest apparatus that holds the belay of a carry whichever way it is pulled, metres;
 * null where none does.
 */
function runToSpot({ standing }: GroundWork, { line }: Descent, rates: Rates): number | null {
  let least: number | null = null;
  for (const { use, footprint, holdKn } of standing?.spots ?? []) {
    if (use === 'blocker' || holdKn < rates.holdFactor * rates.belayFloorKn) continue;
    const runM = Math.hypot(footprint.x - line.start.x, footprint.y - line.start.y) + footprint.lengthM / 2;
    least = Math.min(least ?? runM, runM);
  }
  return least;
}

type Met = Pick<Crossing, 'kind' | 'distanceM'> & { readonly groundM?: number };

/**
 * Roads and trails that a litter can be lowered to: where the descent ends on a road, and those on the way. With a patient
 * point the descent ends there: what lies on the way lies above the patient and is none, what lies below is looked for.
 */
function crossingsToReach(work: GroundWork, descent: Descent): LowerTo[] {
  const { line, crossings } = descent;
  const last: Met[] = line.why === 'road' ? [{ kind: 'road', distanceM: line.lengthM }] : [];
  const met: readonly Met[] = line.why === 'patient point' ? work.side.below : [...crossings, ...last];
  const reached: LowerTo[] = [];
  for (const { kind, distanceM, ...rest } of met) {
    if ((kind !== 'road' && kind !== 'trail') || reached.some(({ what }) => what === kind)) continue;
    const groundM = rest.groundM ?? groundTo(descent, distanceM);
    reached.push({
      what: kind,
      name: kind === 'road' ? nameAt(work, descent, distanceM) : null,
      groundM,
      ropeLineM: groundM,
      goesOn: distanceM < line.lengthM,
    });
  }
  return reached;
}

function nameAt({ inputs, ground }: GroundWork, { line }: Descent, distanceM: number): string | null {
  const { start, direction } = line;
  const at = ground.plane.toLonLat({ x: start.x + distanceM * direction.x, y: start.y + distanceM * direction.y });
  const place = roadAt(inputs.roads, at);
  return place.ok ? place.value.route.name : null;
}

/** Along the ground from the edge to a distance, metres. */
function groundTo({ profile }: Descent, toM: number): number {
  const { distanceM, elevationM } = profile;
  let sum = 0;
  for (let k = 1; k < distanceM.length && distanceM[k - 1] < toM; k++) {
    const run = distanceM[k] - distanceM[k - 1];
    const share = Math.min(1, (toM - distanceM[k - 1]) / run);
    sum += share * Math.hypot(run, elevationM[k] - elevationM[k - 1]);
  }
  return sum;
}
