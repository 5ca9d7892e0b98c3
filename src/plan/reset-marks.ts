import type { StudyLayout } from '../study/index.ts';

/**
 * How far the load has come at each reset, metres: every pull gains the throw less the sit-back, the first also takes in the
 * rope's stretch, as the layout's own number of pulls was worked out [source: practice]. Even pulls where it does not say.
 */
export function resetMarks({ resets, pulls, raiseM, reasons }: StudyLayout): number[] {
  const inputs = reasons.find(({ quantity }) => quantity === 'pulls')?.inputs;
  const { throwM, sitBackM, ropeStretch, stretched } = inputs ?? {};
  const told = [throwM, sitBackM, ropeStretch, stretched].every((value) => Number.isFinite(value));
  return Array.from({ length: resets }, (_value, i) => {
    const even = ((i + 1) * raiseM) / pulls;
    if (!told) return even;
    return Math.min(raiseM, Math.max(0, (i + 1) * (throwM! - sitBackM!) - ropeStretch! * stretched!));
  });
}
