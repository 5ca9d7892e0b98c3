import type { Rates } from '../../book/index.ts';
import { type AdvantageName, advantageNames, landing, pulls } from '../../rigging/index.ts';
import type { Means } from './means.ts';
import type { PullBase } from './pull-base.ts';
import { resetClass } from './rank.ts';
import { arrivalThatFits, kitClass, spareRope } from './rope-class.ts';

/** One haul system on one geometry: all that the rank asks of it but the minutes. */
export interface SystemChoice {
  readonly advantage: AdvantageName;
  readonly system: 'built in' | 'separate haul line';
  readonly handTurns: 0 | 1;
  /** Rope at hand for the line that limits the throw; null where the throw is that of the field and the rope is short. */
  readonly throwRopeM: number | null;
  readonly throwM: number;
  readonly raiseM: number;
  readonly liftedByHandM: number;
  readonly resets: number;
  readonly kit: number;
  readonly crewByAlarm: boolean;
  /** Arrival that brings the last rope needed where it is not at hand, minutes; 0 at hand, null never. */
  readonly kitAtMin: number | null;
}

/** True where two choices on one geometry are the same one. */
export const sameSystem = (a: SystemChoice, b: SystemChoice): boolean =>
  a.advantage === b.advantage && a.system === b.system && a.throwRopeM === b.throwRopeM && a.throwM === b.throwM;

export interface SystemQuestion {
  readonly base: PullBase;
  readonly fieldM: number;
  /** Field that the main line is counted over; the field itself, but in a bound from below. */
  readonly ropeFieldM: number;
  readonly belayRunM: number;
  readonly handTurns: 0 | 1;
  /** People who raise, haul team apart. */
  readonly othersCount: number;
  /** Ropes there when rigging ends, longest first. */
  readonly rigRopesM: readonly number[];
}

/** Numbers of one system while it is compared; nothing is made for those that lose. */
interface Trial {
  advantage: AdvantageName;
  separate: boolean;
  order: number;
  throwRopeM: number | null;
  throwM: number;
  /** The field limits the throw, or no rope does: more rope brings no more. */
  ofField: boolean;
  resets: number;
  kit: number;
  crewByAlarm: boolean;
}

/**
 * The system that ranks first on a geometry, and with `by` "resets" the one with the fewest resets of those that the crew by
 * the first alarm can pull. Null where no throw is long enough to work with.
 */
export function chooseSystem(question: SystemQuestion, means: Means, by: 'rank' | 'resets'): SystemChoice | null {
  if (by === 'rank') return bestOf(question, means, by, true);
  // Ropes that are not there bring no fewer resets while some system works with those that are.
  return bestOf(question, means, by, false) ?? bestOf(question, means, by, true);
}

const emptyTrial = (): Trial => ({
  ...{
    advantage: '3:1',
    separate: false,
    order: 0,
    throwRopeM: null,
    throwM: 0,
    ofField: false,
    resets: 0,
    kit: 0,
    crewByAlarm: false,
  },
});
const trial = emptyTrial();
const held = emptyTrial();

function bestOf(
  question: SystemQuestion,
  means: Means,
  by: 'rank' | 'resets',
  beyondRopes: boolean,
): SystemChoice | null {
  const { base, fieldM, rigRopesM } = question;
  const { rates, allRopesM } = means;
  const { landingM, liftedByHandM } = landing(base.kind, base.kind === 'turned' ? base.edgeToTurnM : fieldM, rates);
  const raiseM = base.ground.ropeLineM + landingM;
  let any = false;
  /** With `by` "resets": fewer than its field allows a system cannot have, and ropes only shorten its throw. */
  const isBeaten = (): boolean => {
    if (by === 'rank' || !any || !held.crewByAlarm) return false;
    const { onLoad, team } = base.byAdvantage[trial.advantage];
    if (question.othersCount + team[question.handTurns] > means.peopleByAlarm) return true;
    return pulls(raiseM, base.stretchM, throwOfField(fieldM, onLoad, rates), rates.sitBackM) - 1 > held.resets;
  };
  const offer = (ropesM: readonly number[] | null): void => {
    if (!fillThrow(ropesM, question, means, raiseM)) return;
    if (any && beforeKit(trial, held, rates.mostResets, by) > 0) return;
    fillKit(question, means);
    if (any && orderOf(trial, held, rates.mostResets, by) >= 0) return;
    any = true;
    Object.assign(held, trial);
  };
  for (let k = 0; k < advantageNames.length; k++) {
    // What comes later is less simple: only a fault of what was found lets it through.
    if (by === 'rank' && any && isEnough(held, rates.mostResets) && held.crewByAlarm) break;
    trial.advantage = advantageNames[k];
    trial.order = k;
    if (isBeaten()) continue;
    for (const separate of [true, false]) {
      trial.separate = separate;
      offer(rigRopesM);
      if (trial.ofField) continue;
      if (any && isEnough(held, rates.mostResets) && held.order === k && held.separate === separate) continue;
      if (allRopesM.length > rigRopesM.length) offer(allRopesM);
      // Ropes that do not reach shorten no throw: then the field decides, and what is missing is told.
      if (beyondRopes) offer(null);
    }
  }
  return any ? chosen(question, means, raiseM, liftedByHandM) : null;
}

const isEnough = (one: Trial, mostResets: number): boolean => one.kit === 0 && one.resets <= mostResets;

const crewFirst = (a: Trial, b: Trial): number => (a.crewByAlarm ? 0 : 1) - (b.crewByAlarm ? 0 : 1);

/** Under 0 where `a` is before `b` by the steps that come before the kit. */
const beforeKit = (a: Trial, b: Trial, mostResets: number, by: 'rank' | 'resets'): number =>
  (by === 'resets' ? crewFirst(a, b) || a.resets - b.resets : 0) ||
  (a.resets <= mostResets ? 0 : 1) - (b.resets <= mostResets ? 0 : 1);

/** Under 0 where `a` is before `b`. */
function orderOf(a: Trial, b: Trial, mostResets: number, by: 'rank' | 'resets'): number {
  return (
    beforeKit(a, b, mostResets, by) ||
    a.kit - b.kit ||
    crewFirst(a, b) ||
    a.order - b.order ||
    resetClass(a.resets) - resetClass(b.resets) ||
    a.resets - b.resets
  );
}

const needs = { main: 0, belay: 0, haul: 0 };

/** Rope of main and belay before any throw, and what the trial's system takes at a throw, metres. */
function fillNeeds(separate: boolean, throwM: number, ideal: number, question: SystemQuestion, means: Means): void {
  const { base, ropeFieldM, belayRunM } = question;
  const { tailsM, pastCaptureM } = means.rates;
  const { kind, belowEdgeM, edgeToTurnM } = base;
  const toCapture = separate && kind === 'turned' ? pastCaptureM : ropeFieldM + tailsM;
  needs.main = belowEdgeM + edgeToTurnM + toCapture + (separate ? 0 : (ideal - 1) * throwM);
  needs.belay = belowEdgeM + belayRunM + tailsM;
  needs.haul = separate ? ideal * throwM + tailsM : 0;
}

/**
 * Fills the trial with the throw that a set of ropes allows, or the field alone (null), and what comes of it but the kit; false where
 * it is too short to work with.
 */
function fillThrow(ropesM: readonly number[] | null, question: SystemQuestion, means: Means, raiseM: number): boolean {
  const { rates, peopleByAlarm } = means;
  const { base, fieldM, handTurns, othersCount } = question;
  const { separate } = trial;
  const { ideal, onLoad, team } = base.byAdvantage[trial.advantage];
  fillNeeds(separate, 0, ideal, question, means);
  const { main, belay } = needs;
  trial.throwRopeM = ropesM === null ? null : spareRope(separate ? main : belay, separate ? belay : 0, ropesM);
  const lengthM = trial.throwRopeM ?? Number.POSITIVE_INFINITY;
  const byField = throwOfField(fieldM, onLoad, rates);
  const byRope = separate ? (lengthM - rates.tailsM) / ideal : (lengthM - main) / (ideal - 1);
  trial.throwM = Math.min(byField, Math.max(0, byRope));
  trial.ofField = byRope >= byField;
  if (!(trial.throwM >= rates.leastThrowM)) return false;
  trial.resets = pulls(raiseM, base.stretchM, trial.throwM, rates.sitBackM) - 1;
  if (!Number.isFinite(trial.resets)) return false;
  trial.crewByAlarm = othersCount + team[handTurns] <= peopleByAlarm;
  return true;
}

function fillKit(question: SystemQuestion, means: Means): void {
  const { separate, throwM, advantage } = trial;
  fillNeeds(separate, throwM, question.base.byAdvantage[advantage].ideal, question, means);
  trial.kit = kitClass(needs, question.rigRopesM, means);
}

const throwOfField = (fieldM: number, onLoad: number, rates: Rates): number =>
  Math.max(0, fieldM - rates.clearanceNearM - rates.clearanceAnchorM) / onLoad;

function chosen(question: SystemQuestion, means: Means, raiseM: number, liftedByHandM: number): SystemChoice {
  const { base, handTurns } = question;
  const { advantage, separate, throwRopeM, throwM, resets, kit, crewByAlarm } = held;
  fillNeeds(separate, throwM, base.byAdvantage[advantage].ideal, question, means);
  return {
    ...{ advantage, handTurns, throwRopeM, throwM, raiseM, liftedByHandM, resets, kit, crewByAlarm },
    system: separate ? 'separate haul line' : 'built in',
    kitAtMin: kit === 0 ? 0 : kit > 2 ? null : arrivalThatFits(needs, means),
  };
}
