import type { PointM } from '../../geo/index.ts';
import { type ForceCheck, type Reason, reason, ropeReasons, tensionReasons } from '../../rigging/index.ts';
import { toRadians } from '../../units/index.ts';
import type { Layout } from './layout-types.ts';
import type { Means } from './means.ts';

/** Every number of a layout that follows from others, with formula, inputs and source. */
export function layoutReasons(layout: Omit<Layout, 'rank' | 'why' | 'reasons'>, means: Means): Reason[] {
  const { ground, run, haul } = layout;
  const { rates, conditions } = means;
  return [
    ...planReasons(layout),
    reason(
      'contacts factor',
      haul.contactsFactor,
      '',
      'exp(edgeFriction * bendRad)',
      {
        edgeFriction: rates.edgeFriction,
        bendRad: ground.contacts.reduce((sum, { bendDeg }) => sum + toRadians(bendDeg), 0),
      },
      'attaway-1999',
    ),
    ...tensionReasons(ground, run, conditions, rates, haul),
    ...ropeReasons(ground, run, rates, haul),
    ...turnReasons(layout),
    ...layout.forces.flatMap(factorReason),
    ...crewReasons(layout),
    ...minuteReasons(layout),
  ];
}

type Worked = Parameters<typeof layoutReasons>[0];

/** Plan distances: haul field, edge to turn. */
function planReasons({ edge, turn, anchor, run }: Worked): Reason[] {
  const distance = (quantity: string, value: number, a: PointM, b: PointM): Reason =>
    reason(
      quantity,
      value,
      'm',
      'sqrt((x2 - x1) ** 2 + (y2 - y1) ** 2)',
      { x1: a.x, y1: a.y, x2: b.x, y2: b.y },
      'derived',
    );
  const field = distance('haul field', run.fieldM, turn?.bend ?? edge, anchor.at);
  return turn === null ? [field] : [field, distance('edge to turn', run.edgeToTurnM, edge, turn.bend)];
}

/** Force on the change of direction while hauling, all hanging. */
function turnReasons({ forces, haul, turnAngleDeg }: Worked): Reason[] {
  const turn = forces.find(({ kind }) => kind === 'turn');
  if (turn === undefined || turnAngleDeg === null) return [];
  const inputs = { t1: haul.tensionKn.hanging, t2: haul.farKn.hanging, angle: turnAngleDeg };
  const formula = 'sqrt(t1 ** 2 + t2 ** 2 + 2 * t1 * t2 * cos(angle))';
  return [reason('force on the change of direction', turn.kn, 'kN', formula, inputs, 'derived')];
}

function factorReason({ at, kind, kn, capacityKn, factor }: ForceCheck): Reason[] {
  if (factor === null || capacityKn === null || !(kn > 0)) return [];
  return [reason(`factor, ${at}, ${kind}`, factor, ': 1', 'capacityKn / kn', { capacityKn, kn }, 'derived')];
}

/** People of each phase that grows with the haul team. */
function crewReasons({ people, haul }: Worked): Reason[] {
  const haulTeam = haul.team.walking;
  return (['leastRaise', 'full'] as const).map((phase) => {
    const { count } = people[phase];
    const name = phase === 'full' ? 'full crew' : 'least crew to raise';
    return reason(name, count, 'people', 'otherRoles + haulTeam', { otherRoles: count - haulTeam, haulTeam });
  });
}

function minuteReasons({ minutes: { total, parts } }: Worked): Reason[] {
  if (total === null || parts.wait === null) return [];
  const { closure, rig, lower, raise, wait } = parts;
  const inputs = { closure, rig, wait, lower, packaging: parts.package, raise };
  return [reason('minutes', total, 'min', 'closure + rig + wait + lower + packaging + raise', inputs)];
}
