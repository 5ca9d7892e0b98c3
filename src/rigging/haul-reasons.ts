import { toDegrees } from '../units/index.ts';
import { idealAdvantage, stagesOf } from './advantage.ts';
import { attendantShare } from './attendant-share.ts';
import type { Conditions } from './conditions.ts';
import { contactsFactor } from './contacts.ts';
import type { Haul, HaulArrangement, HaulGround } from './haul.ts';
import type { HaulSettings } from './haul-settings.ts';
import { load } from './load.ts';
import { type Reason, reason } from './reason.ts';
import { hangingPull, walkingPull } from './slope-pull.ts';
import type { LoadPosition } from './tensions.ts';

/** Reasons for the tensions, pulls and team of a worked-out haul; inputs that are rates bear their rate's name. */
export function tensionReasons(
  ground: HaulGround,
  run: HaulArrangement,
  conditions: Conditions,
  settings: HaulSettings,
  haul: Haul,
): Reason[] {
  const { litterKn, attendantsKn, weightKn } = load(settings);
  const { litterFriction, pulleyEfficiency } = settings;
  const weights = { litterKn, attendantsKn };
  const steeper = (at: LoadPosition): number => Math.max(at.angleDeg, ground.lipDeg);
  const positions = [
    { angleDeg: ground.governingDeg, contactsFactor: contactsFactor(ground.contacts, settings) },
    ...(ground.positions ?? []),
  ];
  const walk = largest(
    positions,
    (at) => walkingPull(load(settings), at.angleDeg, conditions, settings) * at.contactsFactor,
  );
  const hang = largest(positions, (at) => hangingPull(load(settings), steeper(at), settings) * at.contactsFactor);
  const turned = run.kind === 'turned';
  const share = attendantShare(walk.angleDeg, conditions, settings);
  const litterAngle = (angle: number): number => Math.min(angle, toDegrees(Math.atan2(1, litterFriction)));
  const held = { weightKn, angle: Math.max(...positions.map(steeper)) };
  const litter = 'litterKn * (sin(litterAngle) + litterFriction * cos(litterAngle))';
  const sheaves = stagesOf(run.advantage)
    .map(
      (n) =>
        `(${Array.from({ length: n }, (_, i) => ['1', 'pulleyEfficiency'][i] ?? `pulleyEfficiency ** ${i}`).join(' + ')})`,
    )
    .join(' * ');
  const turns = run.handTurns > 0 ? ' * pulleyEfficiency ** handTurns' : '';
  const beyondTurn = turned ? 'kn / pulleyEfficiency' : 'kn';
  return [
    reason(
      'walking tension',
      haul.tensionKn.walking,
      'kN',
      `(${litter} + share * attendantsKn * sin(angle)) * contacts`,
      {
        ...weights,
        litterFriction,
        litterAngle: litterAngle(walk.angleDeg),
        share,
        angle: walk.angleDeg,
        contacts: walk.contactsFactor,
      },
    ),
    reason('hanging tension', haul.tensionKn.hanging, 'kN', `(${litter} + attendantsKn * sin(angle)) * contacts`, {
      ...weights,
      litterFriction,
      litterAngle: litterAngle(steeper(hang)),
      angle: steeper(hang),
      contacts: hang.contactsFactor,
    }),
    reason('held tension', haul.tensionKn.held, 'kN', 'weightKn * sin(angle)', held, 'derived'),
    reason(
      'belay tension',
      haul.tensionKn.belay,
      'kN',
      ground.fullBelay ? 'max(belayFloorKn, weightKn)' : 'max(belayFloorKn, weightKn * sin(angle))',
      { ...held, belayFloorKn: settings.belayFloorKn },
    ),
    reason(
      'main line beyond the turn, hanging',
      haul.farKn.hanging,
      'kN',
      beyondTurn,
      { kn: haul.tensionKn.hanging, pulleyEfficiency },
      'derived',
    ),
    reason(
      'advantage with friction',
      haul.actualAdvantage,
      ': 1',
      `${sheaves}${turns}`,
      { pulleyEfficiency, handTurns: run.handTurns },
      'derived',
    ),
    reason(
      'hand pull',
      haul.pullKn.walking,
      'kN',
      `${beyondTurn} / advantage`,
      { kn: haul.tensionKn.walking, pulleyEfficiency, advantage: haul.actualAdvantage },
      'derived',
    ),
    reason(
      'haul team',
      haul.team.walking,
      'people',
      'max(smallestTeam, ceil(kn / haulerKn))',
      { kn: haul.pullKn.walking, haulerKn: settings.haulerKn, smallestTeam: settings.smallestTeam },
      'bassett-haul-systems',
    ),
    reason(
      'hands at once',
      haul.team.handsAtOnce,
      'people',
      'floor(grabSlipKn / (haulerJerkKn * idealAdvantage))',
      {
        grabSlipKn: settings.grabSlipKn,
        haulerJerkKn: settings.haulerJerkKn,
        idealAdvantage: idealAdvantage(run.advantage),
      },
      'schwartz-pulley-forces',
    ),
  ];
}

function largest(positions: readonly LoadPosition[], kn: (at: LoadPosition) => number): LoadPosition {
  let best = positions[0]!;
  for (const at of positions) if (kn(at) > kn(best)) best = at;
  return best;
}
