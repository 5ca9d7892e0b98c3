import type { Conditions } from './conditions.ts';
import { shownMinutes, slowness, type TimeSettings } from './minutes.ts';
import { type Arrival, arrivalOf } from './people.ts';

export interface CarrySettings extends TimeSettings {
  /** Six bearers up to this angle and ground length, and up to the steeper angle on a shorter slope; four on a short one. */
  readonly carryDeg: number;
  readonly carryM: number;
  readonly carrySteepDeg: number;
  readonly carrySteepM: number;
  readonly carryFourM: number;
  /** Taken off both angles where it is wet, icy or loose. */
  readonly carryWetDeg: number;
  /** Most change of slope at the lip. */
  readonly carryLipDeg: number;
  readonly carryReadyMin: number;
  readonly carryUpMPerMin: number;
}

/** A slope to carry over: angles in degrees, metres along the ground. */
export interface CarryGround {
  readonly planLow: boolean;
  readonly step: boolean;
  readonly lipChangeDeg: number;
  /** Upper end of the governing angle's range. */
  readonly angleHighDeg: number;
  readonly groundLengthM: number;
}

export interface Carry {
  readonly bearers: 4 | 6;
  readonly people: number;
  readonly atMin: number | null;
  readonly minutes: number | null;
  readonly shown: { readonly from: number; readonly to: number } | null;
}

/**
 * Carrying the litter up with one belay line on one anchor, or null where the ground does not allow it (common practice, no
 * source). Bearers, belay and command; with four bearers also one for traffic.
 */
export function carry(
  ground: CarryGround,
  arrivals: readonly Arrival[],
  conditions: Conditions,
  settings: CarrySettings,
): Carry | null {
  const bearers = bearersFor(ground, conditions, settings);
  if (bearers === null) return null;
  const people = bearers + 2 + (bearers === 4 ? 1 : 0);
  const atMin = arrivalOf(people, arrivals);
  const slow = slowness(conditions, settings);
  const moving = ground.groundLengthM / settings.lowerMPerMin + ground.groundLengthM / settings.carryUpMPerMin;
  const total =
    atMin === null ? null : Math.max(settings.carryReadyMin * slow, atMin) + moving * slow + settings.packageMin;
  return {
    bearers,
    people,
    atMin,
    minutes: total,
    shown: total === null ? null : shownMinutes(total, settings.minutesSpread),
  };
}

function bearersFor(ground: CarryGround, conditions: Conditions, settings: CarrySettings): 4 | 6 | null {
  if (!(ground.planLow && !ground.step && ground.lipChangeDeg < settings.carryLipDeg)) return null;
  const worse = conditions.wet || conditions.ice || conditions.looseGround ? settings.carryWetDeg : 0;
  const { angleHighDeg: angle, groundLengthM: length } = ground;
  const steepOk = angle <= settings.carrySteepDeg - worse;
  if (steepOk && length <= settings.carryFourM) return 4;
  if (steepOk && length <= settings.carrySteepM) return 6;
  return angle <= settings.carryDeg - worse && length <= settings.carryM ? 6 : null;
}
