import { noHaulReasons, type Study } from '../study/index.ts';

/** Why a drawing has no layout, in the study's own words; null where it has one. */
export function whyNothing(study: Study): string | null {
  if (study.layouts.length > 0) return null;
  const said = (code: string): string | null => study.warnings.find((warning) => warning.code === code)?.text ?? null;
  if (!study.bench) return said('structure') ?? study.sentence;
  if (!study.edge) return said('no-edge') ?? study.sentence;
  if (study.terrain.screeningOnly) return said('screening-only') ?? 'Screening data only: no spot and no layout.';
  const reasons = noHaulReasons(study.warnings);
  return reasons.length > 0 ? reasons.join(' ') : 'No layout was found here.';
}
