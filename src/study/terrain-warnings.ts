import type { SurfaceInfo } from '../terrain/index.ts';
import { formatLength, type UnitSystem } from '../units/index.ts';
import type { StudyWarning } from './study.ts';

/** A datum shift that may be off by more than this is told, metres: a bench is found to less. */
const SHIFT_NOTE_M = 1;

/** What must be told of the elevation that a study stands on; `doubted` where its kind is a cautious guess. */
export function terrainWarnings(
  info: SurfaceInfo,
  screeningOnly: boolean,
  doubted: boolean,
  units: UnitSystem,
): StudyWarning[] {
  const list: StudyWarning[] = [];
  if (screeningOnly) {
    const why =
      info.kind === 'surface'
        ? 'a surface model: trees and roofs stand in it'
        : info.outdatedBy
          ? `${info.collectedOn === null ? 'of an unknown day' : `of ${info.collectedOn}`}; ${info.outdatedBy.name}, ${info.outdatedBy.on}, changed the ground since`
          : `${formatLength(info.cellM, units)} cells, which cannot show the road bench`;
    list.push({
      code: 'screening-only',
      severity: 'check',
      text: `Screening only: ${info.source} is ${why}. Never planned as low; no spots, no layouts.`,
    });
  }
  if (doubted) {
    list.push({
      code: 'looks-like-surface',
      severity: 'check',
      text: `${info.source} does not say what it is, and trees or roofs seem to stand in it beside the road: taken as a surface model. If it is bare earth, state the terrain kind.`,
    });
  }
  if (info.kind === 'unknown') {
    list.push({
      code: 'kind-unknown',
      severity: 'check',
      text: `${info.source} does not say whether it is bare earth or a surface model: trees may read as ground. State it with the terrain kind.`,
    });
  }
  if (info.shiftAccuracyM !== null && info.shiftAccuracyM !== undefined && info.shiftAccuracyM > SHIFT_NOTE_M) {
    list.push({
      code: 'datum-shift',
      severity: 'note',
      text: `${info.source} is placed through a datum shift that may be off by ${formatLength(info.shiftAccuracyM, units, 'up')}: ground and road may not lie on each other.`,
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
