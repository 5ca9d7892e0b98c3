import type { Study } from '../../study/index.ts';
import { formatLength, formatLengthFigure, lengthUnit, type UnitSystem } from '../../units/index.ts';
import { placeWords } from '../place-words.ts';
import { approaches, sightWords } from './approach.ts';
import { type Draw, fitting, heading, item, paragraph, stack } from './flow.ts';
import { hazards } from './hazards.ts';
import { sheetPens as pens } from './sheet-pens.ts';
import type { PlanSheet } from './sheet-types.ts';

/** Access and sight distances, places around, hazards and marks, what to check; at most so high; all of it
 * stands on the back where it does not fit. */
export function reachBlock(sheet: PlanSheet, units: UnitSystem, mostHeight: number): Draw {
  const draws = reachRows(sheet, units);
  if (draws.length === 0) return stack([], 0);
  return stack([heading('Reach it, hazards'), fitting(draws, 1.5, mostHeight - 23, 'on the back')], 3);
}

/** The same, row by row; for the back what is to be checked comes first, since it is what the front leaves out. */
export function reachRows(sheet: PlanSheet, units: UnitSystem, checksFirst = false): Draw[] {
  const { study, site } = sheet;
  const toCheck = checks(study).map((words) => paragraph(`Check: ${words}`, pens.text, 'Check:'));
  const there = [
    ...sightRows(study, units).map((words) => paragraph(words, pens.text, 'Sight')),
    ...hazards(study, units).map((words) => item('·', words, pens.text, 8)),
    ...sheet.places.map((place) =>
      paragraph(
        `${placeWords(study.site, place, units)}.`,
        pens.text,
        place.kind.charAt(0).toUpperCase() + place.kind.slice(1),
      ),
    ),
  ];
  const notes = site.notes.trim();
  const rest = [
    ...belowRows(study, units).map((words) => paragraph(words, pens.text)),
    ...(notes === '' ? [] : [paragraph(`Notes: ${notes.slice(0, MOST_NOTES)}`, pens.text, 'Notes:')]),
  ];
  return checksFirst ? [...toCheck, ...rest, ...there] : [...there, ...toCheck, ...rest];
}

/** Letters of a site's notes that a sheet has room for. */
const MOST_NOTES = 400;

/** What each end sees, at best, and the formal closure. */
function sightRows(study: Study, units: UnitSystem): string[] {
  const { closure } = study;
  const ends = approaches(study);
  if (!closure || ends.length === 0) return [];
  const need = formatLength(closure.stoppingSightM, units, 'up');
  const seen = ends.map(
    ({ from, sightM, short }) => `from the ${from} ${sightWords(sightM, units)}${short ? ', short' : ''}`,
  );
  const signs = closure.advanceSignsM.map((m) => formatLengthFigure(m, units, 'up')).join(', ');
  const out = signs === '' ? '' : `signs ${signs} ${lengthUnit(units)} apart`;
  const taper = closure.taperM === null ? '' : `taper ${formatLength(closure.taperM, units, 'up')}, `;
  return [
    `Sight ${seen.join('; ')}; ${need} to stop (at best, vegetation not seen).`,
    ...(out === '' ? [] : [`Formal closure: ${taper}${out}.`]),
  ];
}

const checks = ({ warnings, sentence }: Study): string[] =>
  warnings
    .filter(({ severity, text, code }) => severity === 'check' && code !== 'sight-short' && !sentence.includes(text))
    .map(({ text }) => text);

/** What the descent meets on its way, by which it can be reached from below. */
function belowRows({ descent, ways, angle }: Study, units: UnitSystem): string[] {
  const crossings = (descent?.crossings ?? []).map(
    ({ kind, distanceM, widthM }) =>
      `${kind} ${formatLength(distanceM, units)} out, ${formatLength(widthM, units, 'down')} wide`,
  );
  const lower = ways.find(({ kind, reachedBy }) => kind === 'lower' && reachedBy === 'vehicle');
  return [
    ...(crossings.length > 0 ? [`On the descent: ${crossings.join('; ')}.`] : []),
    ...(lower && angle?.planAs !== 'high' ? [`From below: ${lower.meets}.`] : []),
  ];
}
