import type { Study, StudyCount } from '../../study/index.ts';
import { element, num, text } from '../svg.ts';
import { type Draw, heading, lineOf, paragraph, stack } from './flow.ts';
import { sheetPens as pens } from './sheet-pens.ts';

const CHART = 66;

/** Crew counts against who arrives: the step line of people there, the counts needed as levels, each with its minute. */
export function peopleBlock(study: Study): Draw {
  const [layout] = study.layouts;
  if (!layout) return arrivalsOnly(study);
  const { contact, leastLower, leastRaise, full } = layout.people;
  const at = ({ count, atMin }: StudyCount, does: string): string =>
    atMin === null ? `${count} ${does}: never there` : `${count} ${does}, ${atMin <= 0 ? 'at once' : `${atMin} min`}`;
  const counts = [
    ...(contact ? [at(contact, 'make contact')] : []),
    at(leastLower, 'to lower'),
    at(leastRaise, 'to raise'),
    at(full, 'full'),
  ];
  return stack(
    [
      heading('People and minutes'),
      chart(study, [
        { count: leastLower.count, word: 'lower' },
        { count: leastRaise.count, word: 'raise' },
      ]),
      paragraph(`${counts.join('; ')}.`, pens.text),
      paragraph(`Comes: ${comesWords(study) || 'nobody, no arrivals are listed'}.`, pens.text),
    ],
    3,
  );
}

const arrivalsOnly = (study: Study): Draw =>
  study.arriving.length === 0
    ? stack([], 0)
    : stack([heading('Who comes'), paragraph(`${comesWords(study)}.`, pens.text)], 3);

/** "Engine 1 (4) at once, Truck 1 (4) 8 min", earliest first. */
const comesWords = ({ arriving }: Study): string =>
  [...arriving]
    .sort((a, b) => a.atMin - b.atMin)
    .map(({ unit, people, atMin, tier }) => {
      const when = atMin <= 0 ? 'at once' : `${atMin} min`;
      return `${unit} (${people}) ${when}${tier === 'mutual aid' ? ' mutual aid' : ''}`;
    })
    .join(', ');

const chart =
  (study: Study, needs: readonly { count: number; word: string }[]): Draw =>
  ({ x, y, width }) => {
    const arriving = [...study.arriving].sort((a, b) => a.atMin - b.atMin);
    if (arriving.length === 0) return { svg: '', height: 0 };
    const all = arriving.reduce((sum, { people }) => sum + people, 0);
    const lastMin = Math.max(20, ...arriving.map(({ atMin }) => atMin)) * 1.12;
    const most = Math.max(all, ...needs.map(({ count }) => count)) * 1.2;
    const [x0, x1, y0, y1] = [x + 46, x + width - 4, y + CHART - 14, y + 6];
    const px = (min: number): number => x0 + (min / lastMin) * (x1 - x0);
    const py = (people: number): number => y0 - (people / most) * (y0 - y1);
    let there = 0;
    let own = '';
    let aid = '';
    arriving.forEach(({ atMin, people, tier }, i) => {
      const before = there;
      there += people;
      const next = arriving[i + 1]?.atMin ?? lastMin;
      const d = `M${num(px(atMin))} ${num(py(before))}V${num(py(there))}H${num(px(next))}`;
      if (tier === 'mutual aid') aid += d;
      else own += d;
    });
    let svg = element('path', { ...lineOf(0.8), d: `M${num(x0)} ${num(y1)}V${num(y0)}H${num(x1)}` });
    svg += element('path', { ...lineOf(1.6), d: own });
    if (aid !== '') svg += element('path', { ...lineOf(1.4), 'stroke-dasharray': '4 2.5', d: aid });
    const levels = [...needs].sort((a, b) => b.count - a.count);
    levels.forEach(({ count, word }, i) => {
      const level = py(count);
      svg += element('path', {
        ...lineOf(0.6),
        'stroke-dasharray': '1.5 2.5',
        d: `M${num(x0)} ${num(level)}H${num(x1)}`,
      });
      const apart = levels.slice(0, i).every((above) => py(count) - py(above.count) >= 10);
      if (apart)
        svg += text(x0 - 4, level + 3.5, `${count} ${word}`, { ...pens.number, 'font-size': 10, 'text-anchor': 'end' });
    });
    const step = lastMin > 70 ? 20 : 10;
    for (let min = 0; min <= lastMin - 6; min += step) {
      svg += element('path', { ...lineOf(0.8), d: `M${num(px(min))} ${num(y0)}v3` });
      svg += text(px(min), y0 + 12, String(min), { ...pens.number, 'font-size': 10, 'text-anchor': 'middle' });
    }
    svg += text(x1, y0 + 12, 'min', { ...pens.number, 'font-size': 10, 'text-anchor': 'end' });
    svg += text(x1, py(all) - 3, `${all} come`, { ...pens.number, 'font-size': 10, 'text-anchor': 'end' });
    return { svg, height: CHART };
  };
