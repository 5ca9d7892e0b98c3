import { CAUTION, type Study } from '../../study/index.ts';
import { formatLength, type UnitSystem } from '../../units/index.ts';
import { groundRows } from './ground-rows.ts';
import { layoutRows } from './layout-rows.ts';
import { responseRows } from './response-rows.ts';
import { wrap } from './wrap.ts';

/**
 * A study as plain text for a terminal: the sentence, then the ground with where its numbers come from, layouts, ways, who
 * comes, whom to call, warnings, and the caution. Planned as high, layouts stand for the technical team alone, without
 * minutes and people.
 */
export function studyReport(study: Study, units: UnitSystem): string {
  const lines = [
    ...wrap(study.sentence),
    '',
    ...groundRows(study, units),
    ...layoutRows(study, units),
    ...responseRows(study, units),
  ];
  // What the sentence already says is not said again.
  const warnings = study.warnings.filter(({ severity, text }) => severity === 'stop' || !study.sentence.includes(text));
  if (warnings.length > 0) lines.push('');
  for (const warning of warnings) lines.push(...wrap(`${warning.severity}: ${warning.text}`));
  lines.push('', ...wrap(elevationWords(study, units)), ...wrap(CAUTION));
  return `${lines.join('\n')}\n`;
}

function checkWords({ check }: Study): string {
  if (!check) return 'not field-verified';
  const { by, role, on, method, due, dueOn } = check;
  const who = `${by}${role ? `, ${role}` : ''}, ${on}`;
  return method === 'desk'
    ? `not field-verified, at a desk by ${who}`
    : `${who}, ${method}${due ? `, due again since ${dueOn}` : ''}`;
}

function elevationWords(study: Study, units: UnitSystem): string {
  const { terrain } = study;
  const rmse =
    terrain.verticalRmseM === null ? 'vertical accuracy not stated' : `vertical RMSE ${terrain.verticalRmseM} m`;
  const others = terrain.sources.length > 1 ? `; ${terrain.sources.length} rasters used` : '';
  return `Elevation: ${terrain.source}, ${terrain.kind}, ${terrain.crs}, ${formatLength(terrain.cellM, units)} cells, ${rmse}, collected ${terrain.collectedOn ?? 'on an unknown date'}${others}. Field check: ${checkWords(study)}.`;
}
