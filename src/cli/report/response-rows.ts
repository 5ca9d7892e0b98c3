import type { Study } from '../../study/index.ts';
import { formatLength, type UnitSystem } from '../../units/index.ts';
import { counted, line } from './line.ts';

/** Ways, closure, who arrives with what, whom to call. Planned as high without ways, which name minutes and people. */
export function responseRows(study: Study, units: UnitSystem): string[] {
  const high = study.angle?.planAs === 'high';
  return [
    ...(high ? [] : wayRows(study, units)),
    ...closureRows(study, units),
    ...(study.edge ? arrivalRows(study, units) : []),
    ...callRows(study),
  ];
}

function wayRows({ ways }: Study, units: UnitSystem): string[] {
  if (ways.length === 0) return [];
  const rows = ways.map(({ rank, kind, people, minutes, ropeM, meets, allowed, why }) => {
    const at = people.atMin === null ? 'who never come' : `at ${people.atMin} min`;
    const time = minutes.from === null ? 'no time can be told' : `${minutes.from} to ${minutes.to} min`;
    const rope = ropeM === null ? '' : `, longest rope ${formatLength(ropeM, units, 'up')}`;
    return line(
      `${rank}. ${kind}`,
      `${allowed ? '' : 'not with what comes: '}${people.count} people ${at}, ${time}${rope}, met by ${meets}. ${why.join(' ')}`,
    );
  });
  return ['', 'Ways', ...rows];
}

function closureRows({ closure }: Study, units: UnitSystem): string[] {
  if (!closure) return [];
  const up = (m: number): string => formatLength(m, units, 'up');
  const seen = (m: number | null): string => (m === null ? 'not known' : formatLength(m, units, 'down'));
  const { kind, lanesBlocked, taperM, advanceSignsM, stoppingSightM, sightM, speed } = closure;
  const taper = taperM === null ? '' : `, taper ${up(taperM)}`;
  return [
    '',
    line('Closure', `${kind}, ${counted(lanesBlocked, 'lane')} blocked`),
    line(
      '   formal closure',
      `${speed.mph} mph ${speed.how === 'typed' ? 'posted' : 'assumed'}${taper}, advance signs ${advanceSignsM.map(up).join(', ')} on`,
    ),
    line(
      '   sight',
      `stopping takes ${up(stoppingSightM)}; seen from ${seen(sightM.before)} along the drawing, ${seen(sightM.after)} against it`,
    ),
  ];
}

function arrivalRows({ arriving, given }: Study, units: UnitSystem): string[] {
  const rows = arriving.map(({ atMin, people, unit, kit, ropesM, tier }) => {
    const ropes =
      ropesM.length > 0 ? `; ropes that count ${ropesM.map((m) => formatLength(m, units, 'down')).join(', ')}` : '';
    return line(
      `   ${atMin} min`,
      `${unit}, ${people} ${people === 1 ? 'person' : 'people'}, ${tier}${kit.length > 0 ? `; ${kit.join(', ')}` : ''}${ropes}`,
    );
  });
  return [
    '',
    line('Arriving', given.resources === 'shipped' ? 'the shipped fleet, no book given' : 'by the book'),
    ...rows,
  ];
}

function callRows({ call }: Study): string[] {
  if (call.length === 0) return [];
  return [
    '',
    'Call',
    ...call.map(({ who, why, agency, phone, radio }) =>
      line(`   ${who}:`, [why, agency, phone, radio].filter((part) => part !== null).join(', ')),
    ),
  ];
}
