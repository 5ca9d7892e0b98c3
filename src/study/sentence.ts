import { formatAngleRange, formatDegrees, formatLength, type UnitSystem } from '../units/index.ts';
import { STOP_LINE } from './stop-line.ts';
import type { Study } from './study.ts';

/** What opens a study: one or a few short sentences as said on the radio, from the study's own numbers. */
export function studySentence(study: Omit<Study, 'sentence'>, units: UnitSystem): string {
  const { angle, descent, edge } = study;
  const structure = study.warnings.find((warning) => warning.code === 'structure' && warning.severity === 'stop');
  if (structure) return structure.text;
  if (!edge || !descent) {
    const why = study.warnings.find((warning) => warning.code === 'no-edge');
    return why ? why.text : `No drop edge on the ${study.site.sideWords}.`;
  }
  if (!angle) {
    const why = study.warnings.find((warning) => warning.code === 'short-slope');
    return why ? why.text : `Edge found on the ${study.site.sideWords}; no angle can be told from these data.`;
  }
  const parts: string[] = [];
  if (angle.planAs === 'high') parts.push(STOP_LINE);
  if (study.terrain.screeningOnly) {
    parts.push(`Screening only, ${screeningReason(study, units)}: no spots, no layouts.`);
  }
  const undecided = angle.class === 'undecided' ? ', undecided' : '';
  parts.push(
    `Plan as ${angle.planAs}${undecided}: ${formatDegrees(angle.governingDeg)}, ${formatAngleRange(...angle.rangeDeg)} (rule ${angle.rule.name}).`,
  );
  const step = descent.steps[0];
  if (step) {
    parts.push(`Step of about ${formatLength(step.heightM, units)} at ${formatLength(step.distanceM, units)}.`);
  }
  parts.push(
    `${formatLength(descent.ropeLineM, units, 'up')} of rope line ${endWords[descent.end.why]}, drop ${formatLength(descent.dropM, units)}.`,
  );
  if (descent.whole) {
    const whole = descent.whole;
    parts.push(
      `The ground goes on: ${formatLength(whole.ropeLineM, units, 'up')} in all, drop ${formatLength(whole.dropM, units)}, plan the whole as ${whole.planAs}.`,
    );
  }
  return parts.join(' ');
}

const endWords = {
  'patient point': 'to the patient point',
  'ground levels': 'to where the ground levels',
  water: 'to the water',
  road: 'to the road below',
  limit: 'to the limit of this study, the slope goes on',
  'fall line bends': 'to where the fall line bends',
  'no data': 'to where the elevation data end',
} as const;

function screeningReason(study: Omit<Study, 'sentence'>, units: UnitSystem): string {
  const { kind, cellM } = study.terrain;
  return kind === 'surface'
    ? 'a surface model with trees and roofs'
    : `${formatLength(cellM, units)} cells cannot show the road bench`;
}
