import type { StudyWarning } from './study.ts';

const CODES = ['no-haul', 'no-straight-haul', 'no-turned-haul'];

/** Why kinds of haul are missing, in sentences out of a study's warnings; empty where none is. */
export const noHaulReasons = (warnings: readonly StudyWarning[]): string[] =>
  CODES.flatMap((code) => warnings.filter((warning) => warning.code === code).map(({ text }) => text));
