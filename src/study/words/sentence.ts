import { formatAngleRange, formatDegrees, formatLength, type UnitSystem } from '../../units/index.ts';
import { noHaulReasons } from '../no-haul-reasons.ts';
import type { Study } from '../study.ts';
import { crewWords } from './crew-words.ts';
import { firstHaulWords, otherHaulWords } from './haul-words.ts';
import { ropeWords } from './rope-words.ts';
import { STOP_LINE } from './stop-line.ts';
import { wayWords } from './way-words.ts';

/**
 * What opens a study: a few short sentences as said on the radio, from the study's own numbers. What is needed is rounded up,
 * what is there down. Planned as high: the stop line, no haul, no people, no minutes. Where hauls have
 * not been `sought` to the end it says that.
 */
export function studySentence(study: Omit<Study, 'sentence'>, units: UnitSystem, sought = true): string {
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
  const high = angle.planAs === 'high';
  const told = !high && study.layouts.length > 0;
  const parts = [
    high ? STOP_LINE : null,
    study.terrain.screeningOnly ? `Screening only, ${screeningReason(study, units)}: no spots, no layouts.` : null,
    planWords(study),
    weatherWords(study),
    stepWords(study, units),
    told ? wayWords(study) : null,
    ...(told
      ? [...haulParts(study, units), sought ? null : 'A better haul is still being sought.']
      : [slopeWords(study, units), high ? callWords(study) : noHaulWords(study, sought)]),
    wholeWords(study, units),
  ];
  return parts.filter((part) => part !== null).join(' ');
}

function haulParts(study: Omit<Study, 'sentence'>, units: UnitSystem): (string | null)[] {
  return [
    firstHaulWords(study, units),
    otherHaulWords(study, units),
    ropeWords(study, units),
    crewWords(study),
    study.descent!.end.why === 'water' ? 'Water at the bottom.' : null,
  ];
}

function planWords({ angle, origins }: Omit<Study, 'sentence'>): string {
  const { planAs, class: named, governingDeg, rangeDeg, rule } = angle!;
  const undecided = named === 'undecided' ? ', undecided' : '';
  const measured = origins['angle.governingDeg']?.how === 'measured' ? ' measured' : '';
  return `Plan as ${planAs}${undecided}: ${formatDegrees(governingDeg)}${measured}, ${formatAngleRange(...rangeDeg)} (rule ${rule.name}).`;
}

function weatherWords({ given }: Omit<Study, 'sentence'>): string | null {
  const { wet, ice, night, wind } = given.conditions;
  const names = [wet ? 'wet' : '', ice ? 'ice' : '', night ? 'night' : '', wind ? 'wind' : ''].filter(Boolean);
  return names.length > 0 ? `Worked out for ${names.join(', ')}.` : null;
}

function stepWords({ descent }: Omit<Study, 'sentence'>, units: UnitSystem): string | null {
  const step = descent!.steps[0];
  if (!step) return null;
  return `Step of about ${formatLength(step.heightM, units)} at ${formatLength(step.distanceM, units)}.`;
}

const slopeWords = ({ descent }: Omit<Study, 'sentence'>, units: UnitSystem): string =>
  `${formatLength(descent!.ropeLineM, units, 'up')} of rope line ${endWords[descent!.end.why]}, drop ${formatLength(descent!.dropM, units)}.`;

/** Whom to call, for a place planned as high. */
function callWords({ call }: Omit<Study, 'sentence'>): string | null {
  if (call.length === 0) return null;
  const words = call.map(({ who, radio, phone }) => (radio || phone ? `${who} (${radio ?? phone})` : who));
  // Two reasons may call the same team.
  return `Call ${[...new Set(words)].join('; ')}.`;
}

function noHaulWords({ warnings, terrain }: Omit<Study, 'sentence'>, sought: boolean): string | null {
  if (terrain.screeningOnly) return null;
  if (!sought) return 'Hauls are being worked out.';
  return noHaulReasons(warnings).join(' ') || null;
}

function wholeWords({ descent }: Omit<Study, 'sentence'>, units: UnitSystem): string | null {
  const whole = descent!.whole;
  if (!whole) return null;
  return `The ground goes on: ${formatLength(whole.ropeLineM, units, 'up')} in all, drop ${formatLength(whole.dropM, units)}, plan the whole as ${whole.planAs}.`;
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
  const { kind, cellM, outdatedBy } = study.terrain;
  if (kind === 'surface') return 'a surface model with trees and roofs';
  return outdatedBy
    ? `the elevation is older than ${outdatedBy.name}, ${outdatedBy.on}`
    : `${formatLength(cellM, units)} cells cannot show the road bench`;
}
