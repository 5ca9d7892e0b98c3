import type { Study, StudyForce, StudyLayout } from '../../study/index.ts';
import {
  azimuthOf,
  compassWord,
  formatDegrees,
  formatForce,
  formatLength,
  toRadians,
  type UnitSystem,
} from '../../units/index.ts';
import { counted, line } from './line.ts';
import { wrap } from './wrap.ts';

/** Layouts by rank: rope, people, forces, minutes and why. Planned as high without people and minutes. */
export function layoutRows(study: Study, units: UnitSystem): string[] {
  const { layouts, angle } = study;
  if (layouts.length === 0) return [];
  const high = angle?.planAs === 'high';
  const lines = ['', high ? 'For the technical team: haul layouts' : 'Haul layouts'];
  for (const layout of layouts) lines.push(...rowsOf(study, layout, high, units));
  return lines;
}

function rowsOf(study: Study, layout: StudyLayout, high: boolean, units: UnitSystem): string[] {
  const down = (m: number): string => formatLength(m, units, 'down');
  const up = (m: number): string => formatLength(m, units, 'up');
  const { kind, mechanicalAdvantage, system, haulFieldM, throwM, pulls, resets, regripsPerPull, ropeM } = layout;
  const turn = layout.turnAngleDeg === null ? '' : `, rope turned by ${formatDegrees(180 - layout.turnAngleDeg)}`;
  const rows = [
    line(
      `${layout.rank}. ${kind}, ${mechanicalAdvantage}`,
      `${system}, field ${down(haulFieldM)}, throw ${down(throwM)}, ${counted(pulls, 'pull')}, ${counted(resets, 'reset')}${regripsPerPull > 0 ? `, ${counted(regripsPerPull, 're-grip')} a pull` : ''}${turn}`,
    ),
    line('   stand', standWords(study, layout)),
    line(
      '   rope',
      `main ${up(ropeM.main)}, belay ${up(ropeM.belay)}${ropeM.haul === null ? '' : `, haul line ${up(ropeM.haul)}`}; ${fitWords(layout, high, units)}`,
    ),
    line('   lanes', layout.lanesBlocked === 0 ? 'none blocked' : `${layout.lanesBlocked} blocked`),
  ];
  if (layout.liftedByHandM > 0) rows.push(line('   at the edge', `last ${up(layout.liftedByHandM)} lifted by hand`));
  if (!high) rows.push(...crewRows(layout));
  const { walking, hanging, held, belay } = layout.tensionKn;
  const force = (kn: number): string => formatForce(kn, units, 'up');
  rows.push(
    line(
      '   tension',
      `walking ${force(walking)}, all hanging ${force(hanging)}, held ${force(held)}, belay ${force(belay)}`,
    ),
  );
  for (const check of layout.rank === 1 ? layout.forces : tellingForces(layout.forces)) {
    rows.push(line(`   ${check.kind}`, forceWords(check, units)));
  }
  // What parts two layouts may be their crew or their minutes.
  const [decided] = high ? [] : layout.why;
  if (decided) rows.push(...indent(wrap(decided)));
  return rows;
}

/** Of the layouts after the first: what is not met or is to be judged on site, and the check nearest to its limit. */
function tellingForces(forces: readonly StudyForce[]): StudyForce[] {
  const share = ({ factor, required }: StudyForce): number =>
    factor === null || required === null ? Number.POSITIVE_INFINITY : factor / required;
  const onAnchors = forces.filter(({ kind }) => kind !== 'grab' && kind !== 'part');
  const least = Math.min(...onAnchors.map(share));
  return onAnchors.filter((check) => check.ok !== 'yes' || share(check) === least);
}

function crewRows({ people, team, minutes }: StudyLayout): string[] {
  const at = ({ count, atMin }: { count: number; atMin: number | null }): string =>
    `${count} ${atMin === null ? '(never come)' : `at ${atMin} min`}`;
  const contact = people.contact ? `contact ${at(people.contact)}, ` : '';
  return [
    line(
      '   people',
      `${contact}lower ${at(people.leastLower)}, raise ${at(people.leastRaise)}, full ${at(people.full)}`,
    ),
    line(
      '   haul team',
      `${team.walking}, ${team.allHang} if attendants hang, ${team.sustained} by sustained grip; at most ${team.handsAtOnce} on the rope at once`,
    ),
    line(
      '   minutes',
      minutes.from === null
        ? 'cannot be told: people or rope do not come'
        : `${minutes.from} to ${minutes.to} from first arrival to the road, freeing not counted`,
    ),
  ];
}

/** "hold 4.3 of 3 needed", "2.1 of 3 needed, not met", "judge on site"; factors are never rounded up. */
function forceWords({ at, kn, towardDeg, factor, required, ok, points }: StudyForce, units: UnitSystem): string {
  const toward = towardDeg === null ? '' : ` toward ${Math.round(towardDeg)}°`;
  const figures =
    factor === null || required === null
      ? ''
      : `, ${(Math.floor(factor * 10 + 1e-9) / 10).toFixed(1)} of ${required} needed`;
  const verdict = ok === 'no' ? ', not met' : ok === 'judge on site' ? ', judge on site' : '';
  return `${at}: ${formatForce(kn, units, 'up')}${toward}${figures}${points === 2 ? ' on two points' : ''}${verdict}`;
}

function standWords({ spots, marks }: Study, { turn, anchor, lines, points }: StudyLayout): string {
  const name = (id: string): string => {
    const spot = spots.find((candidate) => candidate.id === id);
    if (spot) return spot.apparatus;
    const mark = marks.find((candidate) => candidate.id === id);
    return mark ? (mark.name ?? `${mark.kind} ${mark.id}`) : id;
  };
  const { belay, hand } = lines;
  return [
    ...(turn ? [`turn ${name(turn)}`] : []),
    `anchor ${name(anchor)} to the ${wayTo(points.turn ?? points.edge, points.anchor)}`,
    `belay ${name(belay.anchor)}`,
    ...(hand ? [`hauling end turned at ${name(hand.anchor)}`] : []),
  ].join(', ');
}

function fitWords({ fits, stages }: StudyLayout, high: boolean, units: UnitSystem): string {
  const tiers = `first arriving ${fits.firstArriving}, first alarm ${fits.firstAlarm}, mutual aid ${fits.mutualAid}`;
  const short = fits.short.map(({ line: name, byM, unit, atMin }) => {
    const mend = unit === null ? '' : ` until ${unit}${high ? '' : ` at ${atMin} min`}`;
    return `${name} short by ${formatLength(byM, units, 'up')}${mend}`;
  });
  const staged = (stages ?? []).map(
    ({ count, ropeLengthM }) => `${count} stages with ropes of ${formatLength(ropeLengthM, units, 'down')}`,
  );
  return [`fits ${tiers}`, ...short, ...staged].join('; ');
}

const indent = (lines: readonly string[]): string[] => lines.map((text) => `   ${text}`);

/** Compass word of the way from one point to another near by. */
const wayTo = (from: StudyLayout['points']['edge'], to: StudyLayout['points']['edge']): string =>
  compassWord(azimuthOf((to.lon - from.lon) * Math.cos(toRadians(from.lat)), to.lat - from.lat));
