import type { QuantityName } from '../../book/index.ts';
import type { Study } from '../../study/index.ts';
import { formatAngleRange, formatLength, type UnitSystem } from '../../units/index.ts';
import type { StepName } from './steps.ts';

/** What the study says of a step before anybody looked. */
export function computedWords(step: StepName, study: Study | null, radio: string | null, units: UnitSystem): string {
  if (step === 'sign') return '';
  if (!study) return 'no study';
  // A reading that counts stands in the study itself: what was computed stands beside it.
  const before = (name: QuantityName) => study.field.find(({ quantity }) => quantity === name);
  const marked = (kind: string): boolean => study.marks.some((mark) => mark.kind === kind);
  switch (step) {
    case 'edge': {
      const fieldM = edgeToAnchorM(study);
      return fieldM === undefined ? 'no straight haul' : `${formatLength(fieldM, units, 'down')}, straight`;
    }
    case 'angle':
      return study.angle
        ? `${Math.round(before('angleDeg')?.computed ?? study.angle.governingDeg)}°, ${formatAngleRange(...(before('angleDeg')?.computedRange ?? study.angle.rangeDeg))}`
        : 'not found';
    case 'barrier':
      return marked('barrier') ? 'one is marked' : 'none marked';
    case 'ground':
      return marked('firm ground') ? 'marked firm' : marked('soft ground') ? 'marked soft' : 'not known';
    case 'anchors':
      return (
        anchorsOf(study)
          .slice(0, 2)
          .map(({ words }) => words)
          .join(', ') || 'none found'
      );
    case 'radio':
      return radio ?? (marked('radio dead spot') ? 'dead spot marked' : 'not known');
    case 'up':
      return study.above
        ? `${Math.round(before('slopeAboveDeg')?.computed ?? study.above.angleDeg)}°, ${formatLength(study.above.heightM, units, 'up')}`
        : 'not found';
  }
}

/** From the edge straight back to the anchor as computed, metres; undefined where there is no straight haul. */
export function edgeToAnchorM({ field, layouts }: Study): number | undefined {
  const before = field.find(({ quantity }) => quantity === 'edgeToAnchorM');
  return before?.computed ?? layouts.find(({ kind }) => kind === 'straight')?.haulFieldM;
}

/** What could be an anchor here: of the first layout first, then marked trees and rocks. Ids of spots or marks. */
export function anchorsOf(study: Study): { readonly id: string; readonly words: string; readonly isMark: boolean }[] {
  const first = study.layouts[0];
  const ids = first ? [first.anchor, first.turn, first.lines.belay.anchor] : [];
  const spots = study.spots
    .filter(({ id }) => ids.includes(id))
    .map(({ id, apparatus }) => ({ id, words: apparatus, isMark: false }));
  const marks = study.marks
    .filter(({ kind }) => kind === 'tree' || kind === 'rock')
    .map(({ id, kind, name }) => ({ id, words: name ?? kind, isMark: true }));
  const byRank = (id: string): number => (ids.includes(id) ? 0 : 1);
  return [...spots, ...marks].sort((a, b) => byRank(a.id) - byRank(b.id));
}
