import type { SurfaceInfo } from '../terrain/index.ts';
import { formatLength, type UnitSystem } from '../units/index.ts';
import type { StudyWarning } from './study.ts';

/** What must be told of the elevation that a study stands on. */
export function terrainWarnings(info: SurfaceInfo, screeningOnly: boolean, units: UnitSystem): StudyWarning[] {
  const list: StudyWarning[] = [];
  if (screeningOnly) {
    const why =
      info.kind === 'surface'
        ? 'a surface model: trees and roofs stand in it'
        : `${formatLength(info.cellM, units)} cells, which cannot show the road bench`;
    list.push({
      code: 'screening-only',
      severity: 'check',
      text: `Screening only: ${info.source} is ${why}. Never planned as low; no spots, no layouts.`,
    });
  }
  if (info.kind === 'unknown') {
    list.push({
      code: 'kind-unknown',
      severity: 'check',
      text: `${info.source} does not say whether it is bare earth or a surface model: trees may read as ground. State it with the terrain kind.`,
    });
  }
  if (info.verticalUnitAssumed) {
    list.push({
      code: 'unit-assumed',
      severity: 'check',
      text: `${info.source} does not state its vertical unit: metres were taken.`,
    });
  }
  return list;
}
