import type { Conditions } from './conditions.ts';

export interface TimeSettings {
  readonly closureMin: number;
  readonly rigStraightMin: number;
  readonly rigTurnedMin: number;
  /** From the arrival of a second apparatus, or of a kit that is needed, to rigged. */
  readonly standMin: number;
  readonly lowerMPerMin: number;
  readonly packageMin: number;
  readonly raiseMPerMin: number;
  /** A team walks so fast that the load comes up at this ÷ ideal advantage, metres a minute. */
  readonly walkMPerMin: number;
  readonly resetMin: number;
  readonly resetCompoundMin: number;
  readonly regripMin: number;
  readonly minutesNight: number;
  readonly minutesWet: number;
  readonly minutesIce: number;
  readonly minutesWind: number;
  /** Shown from the computed figure to this multiple of it. */
  readonly minutesSpread: number;
}

/** A job in lengths (metres), counts and minutes after the first arrival; null where what is waited for never comes. */
export interface Job {
  readonly kind: 'straight' | 'turned';
  readonly lowerM: number;
  /** Null where the load is only lowered. */
  readonly raise: {
    readonly raiseM: number;
    readonly idealAdvantage: number;
    readonly compound: boolean;
    readonly pulls: number;
    readonly regripsPerPull: number;
    readonly crewAtMin: number | null;
  } | null;
  /** Arrival of the second apparatus; 0 where the layout stands on one. */
  readonly secondApparatusAtMin: number | null;
  /** Arrival of the kit with which the ropes reach. */
  readonly kitAtMin: number | null;
  readonly lowerCrewAtMin: number | null;
  readonly patients: number;
}

export interface MinuteParts {
  readonly closure: number;
  readonly rig: number;
  readonly lower: number;
  readonly package: number;
  readonly raise: number;
  /** Null where the total is. */
  readonly wait: number | null;
}

export interface Minutes {
  /** From first arrival to the patient at the road, freeing the patient not counted; null where crew or kit never come. */
  readonly total: number | null;
  /** As shown: from the total to 1.5 times it, outward to 5 minutes. */
  readonly shown: { readonly from: number; readonly to: number } | null;
  readonly parts: MinuteParts;
  /** Minute at which the ropes are rigged, before any waiting for a kit: what arrives `standMin` before it is at hand. */
  readonly rigEnds: number;
}

/** Minutes of a job and their parts (common practice, no source). Weather slows everything but packaging and waiting. */
export function minutes(job: Job, conditions: Conditions, settings: TimeSettings): Minutes {
  const slow = slowness(conditions, settings);
  const closure = settings.closureMin * slow;
  const rig = (job.kind === 'straight' ? settings.rigStraightMin : settings.rigTurnedMin) * slow;
  const stood = (atMin: number | null): number =>
    atMin === null ? Number.POSITIVE_INFINITY : atMin + settings.standMin * slow;
  const orNever = (atMin: number | null): number => atMin ?? Number.POSITIVE_INFINITY;

  const lower = (job.lowerM / settings.lowerMPerMin) * slow;
  const raise = job.raise ? raiseMinutes(job.raise, settings) * slow : 0;
  const rigEnds = Math.max(closure + rig, job.secondApparatusAtMin === 0 ? 0 : stood(job.secondApparatusAtMin));
  let now = Math.max(rigEnds, job.kitAtMin === 0 ? 0 : stood(job.kitAtMin));
  let wait = now - closure - rig;
  const until = (atMin: number): void => {
    wait += Math.max(0, atMin - now);
    now = Math.max(now, atMin);
  };
  for (let patient = 0; patient < job.patients; patient++) {
    until(orNever(job.lowerCrewAtMin));
    now += lower + settings.packageMin;
    if (job.raise) until(orNever(job.raise.crewAtMin));
    now += raise;
  }
  const total = Number.isFinite(now) ? now : null;
  return {
    total,
    shown: total === null ? null : shownMinutes(total, settings.minutesSpread),
    parts: {
      closure,
      rig,
      lower: lower * job.patients,
      package: settings.packageMin * job.patients,
      raise: raise * job.patients,
      wait: total === null ? null : wait,
    },
    rigEnds,
  };
}

const SHOWN_STEP_MIN = 5;

/** From the figure to its multiple, outward to five minutes. */
export const shownMinutes = (total: number, spread: number): { from: number; to: number } => ({
  from: Math.floor(total / SHOWN_STEP_MIN + 1e-9) * SHOWN_STEP_MIN,
  to: Math.ceil((total * spread) / SHOWN_STEP_MIN - 1e-9) * SHOWN_STEP_MIN,
});

/** Factor by which the conditions lengthen work, 1 or more. */
export function slowness(conditions: Conditions, settings: TimeSettings): number {
  return (
    (conditions.night ? settings.minutesNight : 1) *
    (conditions.wet ? settings.minutesWet : 1) *
    (conditions.ice ? settings.minutesIce : 1) *
    (conditions.wind ? settings.minutesWind : 1)
  );
}

function raiseMinutes(raise: NonNullable<Job['raise']>, settings: TimeSettings): number {
  const speed = Math.min(settings.raiseMPerMin, settings.walkMPerMin / raise.idealAdvantage);
  const reset = raise.compound ? settings.resetCompoundMin : settings.resetMin;
  return raise.raiseM / speed + (raise.pulls - 1) * reset + raise.pulls * raise.regripsPerPull * settings.regripMin;
}
