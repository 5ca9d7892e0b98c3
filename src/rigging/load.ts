import { weightKn } from '../units/index.ts';

export interface LoadSettings {
  readonly patientKg: number;
  readonly litterAndGearKg: number;
  readonly attendantKg: number;
  /** Attendants on the line. */
  readonly attendants: number;
}

/** Weights on the line, kilonewtons: the litter drags over the ground, the attendants step. */
export interface Load {
  readonly litterKn: number;
  readonly attendantsKn: number;
  readonly weightKn: number;
}

/** Weight of one patient, litter, gear and attendants on the line. More patients mean more cycles, not a heavier load. */
export function load(settings: LoadSettings): Load {
  const litterKn = weightKn(settings.patientKg + settings.litterAndGearKg);
  const attendantsKn = weightKn(settings.attendants * settings.attendantKg);
  return { litterKn, attendantsKn, weightKn: litterKn + attendantsKn };
}
