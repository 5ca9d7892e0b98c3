import { CAUTION, type Study } from '../study/index.ts';
import { FOOT_M, type UnitSystem } from '../units/index.ts';
import type { Pens } from './pens.ts';
import { element, pathThrough, text } from './svg.ts';
import { textBlock } from './text-block.ts';

const WORD_WIDTH = 50;

/** What must be looked at on site, the caution, and what the numbers rest on. */
export function studyFoot(
  study: Study,
  { x, y, width }: { x: number; y: number; width: number },
  units: UnitSystem,
  pens: Pens,
): { svg: string; height: number } {
  let svg = '';
  let next = y;
  for (const severity of ['stop', 'check'] as const) {
    for (const warning of study.warnings.filter(
      (candidate) => candidate.severity === severity && !study.sentence.includes(candidate.text),
    )) {
      svg += text(x, next + 13, severity, pens.severity);
      const words = textBlock(
        warning.text,
        { x: x + WORD_WIDTH, y: next, width: width - WORD_WIDTH },
        pens.fine,
        'serif',
      );
      svg += words.svg;
      next += words.height;
    }
  }
  next += 8;
  svg += element('path', { ...pens.rule, d: pathThrough([x, next, x + width, next]) });
  next += 6;
  for (const words of [CAUTION, sourceWords(study, units)]) {
    const block = textBlock(words, { x, y: next, width }, pens.fine, 'serif');
    svg += block.svg;
    next += block.height + 2;
  }
  return { svg, height: next - y };
}

/** Elevation source, cell, accuracy, dates, and how the lines on the drawing are to be read. */
function sourceWords({ terrain, check, given }: Study, units: UnitSystem): string {
  const { source, kind, cellM, verticalRmseM, collectedOn } = terrain;
  const accuracy =
    verticalRmseM === null ? 'vertical accuracy not declared' : `vertical RMSE ${smallLength(verticalRmseM, units)}`;
  const checked = check
    ? `Checked on the ground ${check.on} by ${check.by}, ${check.role}.`
    : 'Not checked on the ground.';
  const conditions = Object.entries(given.conditions)
    .filter(([, holds]) => holds)
    .map(([name]) => name);
  const under = conditions.length > 0 ? ` Conditions: ${conditions.join(', ')}.` : '';
  const fleet = given.resources === 'shipped' ? ' Fleet, kit and arrivals assumed: the shipped ones.' : '';
  return `Elevation ${source}, ${kind}, ${cellM} m cells, ${accuracy}, ${collectedOn ? `collected ${collectedOn}` : 'date not known'}. ${checked}${under}${fleet} Plan, profile and fields at one scale, height not exaggerated; thin edge computed, heavy edge measured.`;
}

/** An accuracy in whole inches or centimetres, rounded up. */
const smallLength = (m: number, units: UnitSystem): string =>
  units === 'us' ? `${Math.ceil((m / FOOT_M) * 12 - 1e-9)} in` : `${Math.ceil(m * 100 - 1e-9)} cm`;
