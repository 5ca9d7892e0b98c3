import type { Mark } from '../../book/index.ts';
import type { Descent } from '../../descent/index.ts';
import type { LocalPlane } from '../../geo/index.ts';
import { stagesNeeded } from '../../rigging/index.ts';
import type { StagePlan } from './layout-types.ts';

/** A stage may begin on a crossing of this width, and at a tree within this of the descent, metres (common practice, no source). */
const STAGE_LEAST_M = 3;
const TREE_ASIDE_M = 5;

/**
 * How a slope is taken in stages with ropes of each length that two of are there, longest first: crossings wide enough to stand on
 * and trees along the descent, each as far down as a stage reaches. Null where the slope needs no stages or no two ropes are there.
 *
 * @param groundM length along the ground
 * @param takenPerStageM what bridle, runs and tails take of the rope at every stage
 */
export function stagePlans(
  descent: Descent,
  marks: readonly Mark[],
  plane: LocalPlane,
  takenPerStageM: number,
  ropesM: readonly number[],
): StagePlan[] | null {
  const groundM = Math.max(descent.rope.lengthM, descent.smoothedGroundLengthM);
  const lengths = [...new Set(ropesM)]
    .filter((m) => ropesM.filter((one) => one >= m).length >= 2)
    .sort((a, b) => b - a);
  const places = stagePlaces(descent, marks, plane);
  const plans = lengths.flatMap((ropeLengthM) => {
    const count = stagesNeeded(groundM, ropeLengthM, takenPerStageM);
    if (!Number.isFinite(count) || count < 2) return [];
    const perMetre = groundM / descent.line.lengthM;
    return [{ count, ropeLengthM, at: reached(places, (ropeLengthM - takenPerStageM) / perMetre, count) }];
  });
  return plans.length > 0 ? plans : null;
}

type Place = StagePlan['at'][number];

function stagePlaces({ crossings, line }: Descent, marks: readonly Mark[], plane: LocalPlane): Place[] {
  const flats = crossings
    .filter(({ kind, widthM }) => kind !== 'water' && widthM >= STAGE_LEAST_M)
    .map(({ kind, distanceM, widthM }) => ({ distanceM: distanceM + widthM / 2, what: kind as string }));
  const trees = marks.flatMap(({ kind, geometry, name }): Place[] => {
    if (kind !== 'tree' || geometry.type !== 'Point') return [];
    const { x, y } = plane.toLocal({ lon: geometry.coordinates[0], lat: geometry.coordinates[1] });
    const dx = x - line.start.x;
    const dy = y - line.start.y;
    const distanceM = dx * line.direction.x + dy * line.direction.y;
    const aside = Math.abs(dx * line.direction.y - dy * line.direction.x);
    return distanceM > 0 && distanceM < line.lengthM && aside <= TREE_ASIDE_M
      ? [{ distanceM, what: name === null ? 'tree' : `tree ${name}` }]
      : [];
  });
  return [...flats, ...trees].sort((a, b) => a.distanceM - b.distanceM);
}

/** The farthest place within each stage's reach; ends where none is. */
function reached(places: readonly Place[], reachM: number, count: number): Place[] {
  const at: Place[] = [];
  let from = 0;
  for (let stage = 1; stage < count; stage++) {
    const next = places.filter(({ distanceM }) => distanceM > from && distanceM <= from + reachM).at(-1);
    if (next === undefined) break;
    at.push(next);
    from = next.distanceM;
  }
  return at;
}
