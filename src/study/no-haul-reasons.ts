import type { StudyWarning } from './study.ts';

type Kind = 'straight' | 'turned';

/** One reason may stand for both kinds. */
const BOTH = 'no-haul';
const codeOf = (kind: Kind): string => `no-${kind}-haul`;
const CODES: readonly string[] = [BOTH, codeOf('straight'), codeOf('turned')];

/** True for a warning that says why a kind of haul, or both, are missing. */
export const isNoHaul = ({ code }: Pick<StudyWarning, 'code'>): boolean => CODES.includes(code);

/** Why kinds of haul are missing, in sentences out of a study's warnings; empty where none is. */
export const noHaulReasons = (warnings: readonly StudyWarning[]): string[] =>
  CODES.flatMap((code) => warnings.filter((warning) => warning.code === code).map(({ text }) => text));

/** Why one kind of haul is missing, its own reason or that of both; a plain sentence where no reason is told. */
export const noHaulReason = (warnings: readonly StudyWarning[], kind: Kind): string =>
  warnings.find(({ code }) => code === codeOf(kind) || code === BOTH)?.text ?? `No ${kind} haul was found here.`;
