import { type AdvantageName, advantageNames, landing, mainWithoutThrow, pulls, ropeLeft } from '../../rigging/index.ts';
import { type Means, ropesBy } from './means.ts';
import type { PullBase } from './pull-base.ts';
import { resetClass } from './rank.ts';

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

const systems = ['separate haul line', 'built in'] as const;

/**
 * The system that ranks first on a geometry, and with `by` "resets" the one with the fewest resets. Null where no throw is
 * long enough to work with.
 */
export function chooseSystem(question: SystemQuestion, means: Means, by: 'rank' | 'resets'): SystemChoice | null {
  if (by === 'rank') return bestOf(question, means, by, true);
  // Ropes that are not there bring no fewer resets while some system works with those that are.
  return bestOf(question, means, by, false) ?? bestOf(question, means, by, true);
}

function bestOf(
  question: SystemQuestion,
  means: Means,
  by: 'rank' | 'resets',
  beyondRopes: boolean,
): SystemChoice | null {
  let best: SystemChoice | null = null;
  for (const advantage of advantageNames) {
    // What comes later is less simple: only a fault of what was found lets it through.
    if (by === 'rank' && isEnough(best, means) && best.crewByAlarm) break;
    for (const system of systems) {
      const one = numbersOf(question, means, advantage, system, beyondRopes);
      if (one !== null && (best === null || isBefore(one, best, means, by))) best = one;
    }
  }
  return best;
}

function isBefore(a: SystemChoice, b: SystemChoice, { rates }: Means, by: 'rank' | 'resets'): boolean {
  if (by === 'resets') {
    const crew = (one: SystemChoice): number => (one.crewByAlarm ? 0 : 1);
    const first = crew(a) - crew(b) || a.resets - b.resets;
    if (first !== 0) return first < 0;
  }
  const practical = (one: SystemChoice): number => (one.resets <= rates.mostResets ? 0 : 1);
  const order =
    practical(a) - practical(b) ||
    a.kit - b.kit ||
    (a.crewByAlarm ? 0 : 1) - (b.crewByAlarm ? 0 : 1) ||
    advantageNames.indexOf(a.advantage) - advantageNames.indexOf(b.advantage) ||
    resetClass(a.resets) - resetClass(b.resets) ||
    a.resets - b.resets;
  return order < 0;
}

function numbersOf(
  question: SystemQuestion,
  means: Means,
  advantage: AdvantageName,
  system: 'built in' | 'separate haul line',
  beyondRopes: boolean,
): SystemChoice | null {
  const withRig = numbersWith(question.rigRopesM, question, means, advantage, system);
  if (isEnough(withRig, means)) return withRig;
  const sameRopes = means.allRopesM.length === question.rigRopesM.length;
  const withAll = sameRopes ? null : numbersWith(means.allRopesM, question, means, advantage, system);
  const withRopes = better(withRig, withAll, means);
  if (!beyondRopes || isEnough(withRopes, means)) return withRopes;
  // Ropes that do not reach shorten no throw: then the field decides, and what is missing is told.
  return better(withRopes, numbersWith(null, question, means, advantage, system), means);
}

const isEnough = (one: SystemChoice | null, { rates }: Means): one is SystemChoice =>
  one !== null && one.kit === 0 && one.resets <= rates.mostResets;

function better(a: SystemChoice | null, b: SystemChoice | null, means: Means): SystemChoice | null {
  if (a === null || b === null) return a ?? b;
  return isBefore(b, a, means, 'rank') ? b : a;
}

/** The system with the throw that a set of ropes allows, or the field alone (null); null where it is too short to work with. */
function numbersWith(
  ropesM: readonly number[] | null,
  { base, fieldM, ropeFieldM, belayRunM, handTurns, othersCount, rigRopesM }: SystemQuestion,
  means: Means,
  advantage: AdvantageName,
  system: 'built in' | 'separate haul line',
): SystemChoice | null {
  const { rates } = means;
  const { kind, belowEdgeM, edgeToTurnM, stretchM, ground } = base;
  const { ideal, onLoad, team } = base.byAdvantage[advantage];
  const run = { kind, system, advantage, edgeToTurnM, fieldM: ropeFieldM, belayRunM };
  const mainM = mainWithoutThrow(belowEdgeM, run, rates);
  const belayM = belowEdgeM + belayRunM + rates.tailsM;
  const separate = system === 'separate haul line';
  const throwRopeM = ropesM === null ? null : spareRope(separate ? [mainM, belayM] : [belayM], ropesM);
  const lengthM = throwRopeM ?? Number.POSITIVE_INFINITY;
  const byField = Math.max(0, fieldM - rates.clearanceNearM - rates.clearanceAnchorM) / onLoad;
  const byRope = separate ? (lengthM - rates.tailsM) / ideal : (lengthM - mainM) / (ideal - 1);
  const throwM = Math.min(byField, Math.max(0, byRope));
  if (!(throwM >= rates.leastThrowM)) return null;
  const { landingM, liftedByHandM } = landing(kind, kind === 'turned' ? edgeToTurnM : fieldM, rates);
  const raiseM = ground.ropeLineM + landingM;
  const count = pulls(raiseM, stretchM, throwM, rates.sitBackM);
  if (!Number.isFinite(count)) return null;
  const needsM = separate ? [mainM, belayM, ideal * throwM + rates.tailsM] : [mainM + (ideal - 1) * throwM, belayM];
  const kit = kitClass(needsM, rigRopesM, means);
  return {
    ...{ advantage, system, handTurns, throwRopeM, throwM, raiseM, liftedByHandM, kit },
    resets: count - 1,
    kitAtMin: kit === 0 ? 0 : kit > 2 ? null : arrivalThatFits(needsM, means),
    crewByAlarm: othersCount + team[handTurns] <= means.peopleByAlarm,
  };
}

/** The rope left for the throw; where the other lines find no rope of their own, the longest go to them all the same. */
function spareRope(needsM: readonly number[], ropesM: readonly number[]): number {
  return ropeLeft(needsM, ropesM) ?? ropesM[needsM.length] ?? 0;
}

/** 0 at hand when rigging ends, 1 fits by the first alarm, 2 by mutual aid, else 3 + whole metres short; one rope a line. */
export function kitClass(
  needsM: readonly number[],
  rigRopesM: readonly number[],
  { alarmRopesM, allRopesM }: Pick<Means, 'alarmRopesM' | 'allRopesM'>,
): number {
  const needs = [...needsM].sort((a, b) => b - a);
  if (shortM(needs, rigRopesM) <= 0) return 0;
  if (shortM(needs, alarmRopesM) <= 0) return 1;
  const short = shortM(needs, allRopesM);
  return short <= 0 ? 2 : 3 + Math.ceil(short - ROPE_TOLERANCE_M);
}

/** The arrival with which one rope a line is there, minutes; null where it never is. */
function arrivalThatFits(needsM: readonly number[], means: Means): number | null {
  const needs = [...needsM].sort((a, b) => b - a);
  return means.kits.find(({ atMin }) => shortM(needs, ropesBy(means, atMin)) <= 0)?.atMin ?? null;
}

const ROPE_TOLERANCE_M = 1e-9;

/** What is missing in all, longest ropes to longest needs, metres. */
function shortM(needs: readonly number[], ropesM: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < needs.length; i++) {
    const missing = needs[i] - (ropesM[i] ?? 0);
    if (missing > ROPE_TOLERANCE_M) sum += missing;
  }
  return sum;
}
