import type { Conditions } from './conditions.ts';

export interface BootSettings {
  /** Share of the attendants' weight on the rope up to `attendantShareFromDeg`; it rises evenly to 1 at `attendantShareFullDeg`. */
  readonly attendantShareLeast: number;
  readonly attendantShareFromDeg: number;
  readonly attendantShareFullDeg: number;
  /** Added where the ground is wet. */
  readonly attendantShareWet: number;
}

/**
 * Share of the attendants' weight that the rope carries while they walk, 0 to 1 (common practice, no source). Boots step,
 * they do not drag: the rest stands on the slope. Ice, snow and loose ground give no footing.
 */
export function attendantShare(angleDeg: number, conditions: Conditions, settings: BootSettings): number {
  if (conditions.ice || conditions.looseGround) return 1;
  const { attendantShareLeast: least, attendantShareFromDeg: from, attendantShareFullDeg: full } = settings;
  const rise = Math.min(1, Math.max(0, (angleDeg - from) / (full - from)));
  return Math.min(1, least + (1 - least) * rise + (conditions.wet ? settings.attendantShareWet : 0));
}
