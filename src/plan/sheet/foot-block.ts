import { quantities } from '../../book/index.ts';
import { CAUTION, readingText, type Study } from '../../study/index.ts';
import { FOOT_M, type UnitSystem } from '../../units/index.ts';
import { element, num, text } from '../svg.ts';
import { type Draw, lineOf, paragraph, ruleAcross, stack } from './flow.ts';
import { PER_MM } from './paper.ts';
import { sheetPens as pens } from './sheet-pens.ts';
import { CHECK_BAR_MM, type PlanSheet } from './sheet-types.ts';

/** Caution, elevation source and accuracy, who looked and when, and the bar that tells whether the print is at its size. */
export const footBlock = (sheet: PlanSheet, units: UnitSystem): Draw =>
  stack([ruleAcross, paragraph(CAUTION, pens.print), paragraph(sourceWords(sheet, units), pens.print), checkBar], 3);

/** Exactly 100 mm of solid line, a tick each 10 mm, and what to do where it measures otherwise. */
export const checkBar: Draw = ({ x, y }) => {
  const end = x + CHECK_BAR_MM * PER_MM;
  let ticks = '';
  for (let mm = 0; mm <= CHECK_BAR_MM; mm += 10) {
    const half = mm % 50 === 0 ? 4 : 2;
    ticks += `M${num(x + mm * PER_MM)} ${num(y + 6 - half)}v${2 * half}`;
  }
  return {
    svg:
      element('path', { ...lineOf(1), class: 'check-bar', d: `M${num(x)} ${num(y + 6)}H${num(end)}` }) +
      element('path', { ...lineOf(0.8), d: ticks }) +
      text(end + 10, y + 9.5, 'must measure 100 mm; else print at 100 % or do not measure here', pens.print),
    height: 12,
  };
};

/** Where the heights come from and how good they are, who looked, what was measured and what assumed. */
export function sourceWords(sheet: PlanSheet, units: UnitSystem): string {
  const { terrain, given } = sheet.study;
  const { source, kind, cellM, verticalRmseM, collectedOn } = terrain;
  const accuracy =
    verticalRmseM === null
      ? 'vertical accuracy not declared'
      : `vertical RMSE ${smallLength(verticalRmseM, units)}, declared`;
  const conditions = Object.entries(given.conditions)
    .filter(([, holds]) => holds)
    .map(([name]) => name);
  return [
    `Elevation ${nameOfFile(source)}, ${kind}, ${cellM} m cells, ${accuracy}, ${collectedOn ? `collected ${collectedOn}` : 'date not known'}.`,
    checkWords(sheet),
    conditions.length > 0 ? `Worked out for ${conditions.join(', ')}.` : '',
    given.resources === 'shipped' ? 'Fleet, kit and arrivals assumed: the shipped ones.' : '',
    measuredWords(sheet.study, units),
    `Heavy edge measured, thin edge computed${assumedWords(sheet.study)}.`,
  ]
    .filter((words) => words !== '')
    .join(' ');
}

/** The file's own name: the folder that it lay in is no business of paper. */
const nameOfFile = (source: string): string => source.split(/[\\/]/u).at(-1) || source;

/** Who looked and when, or that nobody did. */
function checkWords({ check, overdueSince }: Pick<PlanSheet, 'check' | 'overdueSince'>): string {
  if (!check) return 'Not field-verified.';
  const by = `${check.by}${check.role ? `, ${check.role}` : ''}`;
  const under = check.conditions ? `, ${check.conditions}` : '';
  const readings =
    check.readings > 0 ? `, ${check.readings} reading${check.readings === 1 ? '' : 's'} in the book` : '';
  const late = overdueSince === null ? '' : ` Due again since ${overdueSince}.`;
  if (check.method === 'desk') return `Not field-verified; looked over at a desk by ${by} on ${check.on}.${late}`;
  const how = check.method === 'walked' ? 'Walked' : 'Driven past';
  return `${how} by ${by} on ${check.on}${under}${readings}.${late}`;
}

/** Numbers of the sheet that were read on site, each beside what it took the place of. */
function measuredWords({ field }: Study, units: UnitSystem): string {
  const told = field
    .filter(({ used }) => used === 'measured')
    .map(({ quantity, measured, computed, betters, by, on }) => {
      const shown = (value: number): string => readingText({ quantity }, value, units);
      const was =
        computed === null ? '' : ` (computed ${shown(computed)}${betters ? ', gentler on two readings' : ''})`;
      return `${quantities[quantity].words} ${shown(measured)}${was}, ${by}, ${on}`;
    });
  return told.length > 0 ? `Measured: ${told.join('; ')}.` : '';
}

/** What was assumed among the numbers that decide. */
function assumedWords({ origins }: Study): string {
  const assumed = Object.entries(origins)
    .filter(([, { how }]) => how === 'assumed')
    .map(([path]) => names[path])
    .filter((name) => name !== undefined);
  return assumed.length > 0 ? `; assumed: ${[...new Set(assumed)].join(', ')}` : '';
}

const names: Readonly<Record<string, string>> = {
  'edge.offsetM': 'the edge',
  'bench.widthM': 'the bench',
  'terrain.verticalRmseM': 'the accuracy',
  'closure.taperM': 'the speed',
  arriving: 'who arrives',
};

/** Whole inches or centimetres, rounded up. */
const smallLength = (m: number, units: UnitSystem): string =>
  units === 'us' ? `${Math.ceil((m / FOOT_M) * 12 - 1e-9)} in` : `${Math.ceil(m * 100 - 1e-9)} cm`;
