import type { Study, StudyLayout } from '../study/index.ts';
import { formatLength, type UnitSystem } from '../units/index.ts';
import { ruler } from './field-ruler.ts';
import type { Pens } from './pens.ts';
import { resetMarks } from './reset-marks.ts';
import { element, num, pathThrough, text } from './svg.ts';
import { advance, textWidth } from './text-width.ts';
import { wrap } from './wrap.ts';

interface Place {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  /** Drawing units per metre of field and of raise alike. */
  readonly scale: number;
  readonly units: UnitSystem;
  readonly pens: Pens;
}

const NAME_WIDTH = 150;

/** Room that a comparison's names and resets take beside a field, drawing units. */
export const BESIDE_FIELD = NAME_WIDTH + 190;

/** One layout to scale: its field as a ruler, under it the raise cut into pulls, a tall tick at each reset. */
export function haulCompare(
  study: Study,
  layout: StudyLayout,
  isFirst: boolean,
  { x, y, width, scale, units, pens }: Place,
): { svg: string; height: number } {
  const title = layout.kind === 'turned' ? 'Turned haul' : 'Straight haul';
  const forTeam = study.angle?.planAs === 'high';
  const field = `field ${formatLength(layout.haulFieldM, units, 'down')}`;
  const fieldX = x + NAME_WIDTH;
  let svg = text(x, y + 12, `${title}, ${layout.mechanicalAdvantage}`, pens.bodyStrong);
  svg += ruler({ x: fieldX, y: y + 4, deg: 0, scale }, layout, units, pens);
  svg += text(fieldX + layout.haulFieldM * scale + 8, y + 12, field, pens.body);
  svg += text(x + width, y + 12, count(layout.resets, 'reset'), { ...pens.bodyStrong, 'text-anchor': 'end' });
  const barY = y + 30;
  const end = x + layout.raiseM * scale;
  svg += element('path', {
    ...(isFirst && !forTeam ? pens.barChosen : pens.bar),
    d: pathThrough([x, barY, end, barY]),
  });
  const ticks = resetMarks(layout).map((raisedM) => `M${num(x + raisedM * scale)} ${num(barY - 7)}v14`);
  const ends = [x, end].map((at) => `M${num(at)} ${num(barY - 4)}v8`);
  svg += element('path', { ...pens.tick, class: 'pull-ends', d: ends.join('') });
  if (ticks.length > 0) svg += element('path', { ...pens.tick, d: ticks.join('') });
  const raise = `raise ${formatLength(layout.raiseM, units, 'up')}`;
  const besideBar = end + 10 + textWidth([raise], 12) < x + width;
  if (besideBar) svg += text(end + 10, barY + 4, raise, pens.body);
  const words = [...(besideBar ? [] : [raise]), ...workWords(layout, units, forTeam)].join(' · ');
  const lines = wrap(words, width, advance(12, 'sans'));
  lines.forEach((line, i) => {
    svg += text(x, barY + 24 + 16 * i, line, pens.body);
  });
  return { svg, height: 44 + 16 * lines.length };
}

function workWords(layout: StudyLayout, units: UnitSystem, forTeam: boolean): string[] {
  const { throwM, team, regripsPerPull, liftedByHandM, lanesBlocked, system } = layout;
  return [
    `${count(layout.pulls, 'pull')}, throw ${formatLength(throwM, units, 'down')}`,
    ...(system === 'separate haul line' ? ['separate haul line'] : []),
    // The team of a technical rope team is its own affair.
    ...(forTeam ? [] : [teamWords(team)]),
    ...(regripsPerPull > 0 ? [`${count(regripsPerPull, 're-grip')} a pull`] : []),
    ...(liftedByHandM > 0.05 ? [`last ${formatLength(liftedByHandM, units, 'up')} by hand`] : []),
    lanesBlocked === 0 ? 'takes no lane' : `takes ${count(lanesBlocked, 'lane')}`,
  ];
}

const teamWords = ({ walking, allHang }: StudyLayout['team']): string =>
  `${count(walking, 'hauler')}${allHang > walking ? `, ${allHang} if attendants hang` : ''}`;

const count = (n: number, word: string): string => `${n} ${word}${n === 1 ? '' : 's'}`;
