import { noHaulReason, type Study, type StudyLayout } from '../../study/index.ts';
import {
  formatDegrees,
  formatForce,
  formatLength,
  formatLengthFigure,
  formatPercent,
  type UnitSystem,
} from '../../units/index.ts';
import { forceWords } from '../force-words.ts';
import { nameOf } from '../layout-label-texts.ts';
import { resetMarks } from '../reset-marks.ts';
import { bestOfKinds } from '../shown-layouts.ts';
import { element, num, pathThrough } from '../svg.ts';
import { type Draw, heading, lineOf, paragraph, row, stack } from './flow.ts';
import { sheetPens as pens } from './sheet-pens.ts';
import { waysBlock } from './ways-block.ts';

/**
 * Best straight and best turned haul, each raise cut into its pulls; why a kind is missing stands in its place. Brief where room
 * is short: of the second kind its field and resets alone.
 */
export function raiseBlock(study: Study, units: UnitSystem, brief: boolean): Draw {
  const [first] = study.layouts;
  if (!first) return stack([], 0);
  const { turned, straight } = bestOfKinds(study, null);
  const kinds = first.kind === 'straight' ? (['straight', 'turned'] as const) : (['turned', 'straight'] as const);
  const most = Math.max(turned?.raiseM ?? 0, straight?.raiseM ?? 0);
  return stack(
    [
      heading('The raise', formatLength(first.raiseM, units, 'up')),
      waysBlock(study),
      ...kinds.map((kind) => {
        const layout = kind === 'turned' ? turned : straight;
        if (!layout) return paragraph(noHaulReason(study.warnings, kind), pens.text);
        return oneRaise(layout, layout === first, brief, most, units);
      }),
    ],
    5,
  );
}

function oneRaise(layout: StudyLayout, first: boolean, brief: boolean, mostM: number, units: UnitSystem): Draw {
  const { kind, mechanicalAdvantage, haulFieldM, resets } = layout;
  const name = `${kind === 'turned' ? 'Turned' : 'Straight'} ${formatLength(haulFieldM, units, 'down')}, ${mechanicalAdvantage}`;
  const head = [row(name, counted(resets, 'reset'), first), pullBar(layout, mostM)];
  return stack(brief && !first ? head : [...head, paragraph(workWords(layout, units), pens.text)], 2);
}

/** The raise to scale, a tall tick at each reset. */
const pullBar =
  (layout: StudyLayout, mostM: number): Draw =>
  ({ x, y, width }) => {
    const scale = width / mostM;
    const end = x + layout.raiseM * scale;
    const ticks = resetMarks(layout)
      .map((m) => `M${num(x + m * scale)} ${num(y + 1)}v12`)
      .join('');
    const ends = [x + 0.5, end - 0.5].map((at) => `M${num(at)} ${num(y + 3)}v8`).join('');
    return {
      svg:
        element('path', { ...lineOf(3), class: 'pull-bar', d: pathThrough([x, y + 7, end, y + 7]) }) +
        element('path', { ...lineOf(1.1), d: ends + ticks }),
      height: 14,
    };
  };

function workWords(
  { throwM, pulls, regripsPerPull, liftedByHandM, team, system, minutes }: StudyLayout,
  units: UnitSystem,
) {
  const hang = team.allHang > team.walking ? ` (${team.allHang} if attendants hang)` : '';
  const parts = [
    `${counted(pulls, 'pull')}, throw ${formatLength(throwM, units, 'down')}`,
    ...(system === 'separate haul line' ? ['separate haul line'] : []),
    `${team.walking} haul${hang}`,
    ...(team.checkGrab ? ['two grabs or one attendant fewer'] : []),
    ...(regripsPerPull > 0 ? [`${counted(regripsPerPull, 're-grip')} a pull`] : []),
    ...(liftedByHandM > 0.05 ? [`last ${formatLength(liftedByHandM, units, 'up')} by hand`] : []),
  ];
  const time = minutes.from === null ? '' : ` ${minutes.from} to ${minutes.to} min.`;
  return `${parts.join(', ')}.${time}`;
}

/** Rope of the leading layout against what comes, and what is short. */
export function ropeBlock(study: Study, units: UnitSystem): Draw {
  const [layout] = study.layouts;
  if (!layout) return stack([], 0);
  const high = study.angle?.planAs === 'high';
  return stack([heading(`Rope, ${layout.kind} haul`, 'need of longest'), ...ropeRows(study, layout, units, high)], 2);
}

/** Rows of rope needed of the longest that comes; `high` leaves out minutes. */
export function ropeRows(study: Study, layout: StudyLayout, units: UnitSystem, high: boolean): Draw[] {
  const { ropeM, fits } = layout;
  const longest = longestThere(study, layout);
  const there = longest > 0 ? formatLength(longest, units, 'down') : 'none that comes';
  const need = ropeNeed(study, layout, units);
  const of = (m: number): string => `${need(m)} of ${there}`;
  const short = fits.short.map(({ line, byM, unit, atMin }) => {
    const name = line === 'haul' ? 'haul line' : line;
    const until =
      unit === null ? ', nobody listed brings more' : ` until ${unit}${high || atMin === null ? '' : `, ${atMin} min`}`;
    return paragraph(`${name} short by ${formatLength(byM, units, 'up')}${until}.`, pens.textStrong);
  });
  return [
    row('main', of(ropeM.main)),
    row('belay', of(ropeM.belay)),
    ...(ropeM.haul === null ? [] : [row('haul line, separate', of(ropeM.haul))]),
    paragraph(fitWords(layout), pens.text),
    ...short,
  ];
}

/**
 * Writes metres of rope that a layout needs, in the reader's unit without its name, rounded up; a need that the longest rope just
 * covers is not rounded past it: "197 of 196" would read as short.
 */
export function ropeNeed(study: Study, layout: StudyLayout, units: UnitSystem): (m: number) => string {
  const longest = longestThere(study, layout);
  const figure = (m: number, way: 'up' | 'down'): string => formatLengthFigure(m, units, way);
  const covered = (m: number): boolean => m <= longest && figure(m, 'down') === figure(longest, 'down');
  return (m) => figure(m, covered(m) ? 'down' : 'up');
}

const tiers = ['first arriving', 'first alarm', 'mutual aid'] as const;

/** Longest rope of the earliest tier whose kit fits, as the sentence tells it; of all that comes where none does. Metres. */
function longestThere({ arriving }: Study, { fits }: StudyLayout): number {
  const fit = [fits.firstArriving, fits.firstAlarm, fits.mutualAid].indexOf('yes');
  const last = fit < 0 ? tiers.length - 1 : fit;
  return Math.max(0, ...arriving.filter(({ tier }) => tiers.indexOf(tier) <= last).flatMap(({ ropesM }) => ropesM));
}

function fitWords({ fits }: StudyLayout): string {
  const said = { yes: 'fits', joined: 'joined only', no: 'does not fit' } as const;
  return `First-arriving kit ${said[fits.firstArriving]}, first alarm ${said[fits.firstAlarm]}, mutual aid ${said[fits.mutualAid]}.`;
}

/** Share of the weight, tensions and what the anchors take; with the load that they are for. */
export function forcesBlock(study: Study, units: UnitSystem): Draw {
  const [layout] = study.layouts;
  const share = shareRows(study);
  if (!layout) return share.length === 0 ? stack([], 0) : stack([heading('Forces'), ...share], 2);
  return stack([heading('Forces', 'found of needed'), ...share, ...forceRows(study, layout, units)], 2);
}

const shareRows = ({ angle }: Study): Draw[] =>
  angle
    ? [
        row('rope pull, of the weight', formatPercent(angle.ropePullOfWeight)),
        row('ground press', formatPercent(angle.groundPressOfWeight)),
      ]
    : [];

/** Tensions of a layout, and force, hold and strength at each place where rope is tied. */
export function forceRows(study: Study, layout: StudyLayout, units: UnitSystem): Draw[] {
  const { tensionKn, turn, anchor, lines, turnAngleDeg } = layout;
  const up = (kn: number): string => formatForce(kn, units, 'up');
  const at = (place: string, name: string): Draw[] => {
    const words = forceWords(layout, place, units)?.replaceAll(' needed', '');
    if (!words) return [];
    return [paragraph(`${name}: ${words}`, words.includes('not met') ? pens.textStrong : pens.text, `${name}:`)];
  };
  const angle = turnAngleDeg === null ? '' : ` (${formatDegrees(turnAngleDeg)})`;
  return [
    row('main, raising', up(tensionKn.hanging)),
    row('main, held', up(tensionKn.held)),
    row('belay', up(tensionKn.belay)),
    ...(turn ? at('change of direction', `Turn${angle}, ${nameOf(study, turn)}`) : []),
    ...at('main anchor', `Anchor, ${nameOf(study, anchor)}`),
    ...at('belay anchor', `Belay, ${nameOf(study, lines.belay.anchor)}`),
  ];
}

export const counted = (n: number, word: string): string => `${n} ${word}${n === 1 ? '' : 's'}`;
