import type { Study, StudyLayout } from '../study/index.ts';

export interface ShownLayouts {
  readonly chosen: StudyLayout | null;
  /** The best of the other kind, else the next of the same kind: drawn thin and dashed. */
  readonly other: StudyLayout | null;
}

/** Which layouts a drawing shows: the asked one, or the first by rank, and beside it the best of the other kind. */
export function shownLayouts({ layouts }: Study, layoutId: string | null): ShownLayouts {
  const chosen = layouts.find(({ id }) => id === layoutId) ?? layouts[0] ?? null;
  if (!chosen) return { chosen: null, other: null };
  const rest = layouts.filter((layout) => layout !== chosen);
  return { chosen, other: rest.find(({ kind }) => kind !== chosen.kind) ?? rest[0] ?? null };
}

/** The chosen layout and the best of the other kind, for a comparison. */
export function bestOfKinds(
  study: Study,
  layoutId: string | null,
): { turned: StudyLayout | null; straight: StudyLayout | null } {
  const { chosen } = shownLayouts(study, layoutId);
  const best = (kind: StudyLayout['kind']): StudyLayout | null =>
    chosen?.kind === kind ? chosen : (study.layouts.find((layout) => layout.kind === kind) ?? null);
  return { turned: best('turned'), straight: best('straight') };
}
