import { ceilWithin } from './ceil-within.ts';

export interface PullSettings {
  /** Share of the rope between litter and haul grab that stretches before the load first moves. */
  readonly ropeStretch: number;
  /** What the load sinks back onto the capture at each pull, metres. */
  readonly sitBackM: number;
}

/** Pulls to raise a load by `raiseM` after taking in `stretchM`: ⌈(D + stretch) ÷ (throw − sit-back)⌉; infinite where no pull gains. */
export function pulls(raiseM: number, stretchM: number, throwM: number, sitBackM: number): number {
  const gainM = throwM - sitBackM;
  return gainM > 0 ? Math.max(1, ceilWithin((raiseM + stretchM) / gainM)) : Number.POSITIVE_INFINITY;
}

/** How often the team must walk back and take a new grip within one pull: ⌈walk ÷ room⌉ − 1; infinite without room. */
export const regripsPerPull = (walkM: number, roomM: number): number =>
  roomM > 0 ? Math.max(0, ceilWithin(walkM / roomM) - 1) : Number.POSITIVE_INFINITY;
