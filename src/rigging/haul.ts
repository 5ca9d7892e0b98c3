import { actualAdvantage, idealAdvantage } from './advantage.ts';
import type { Conditions } from './conditions.ts';
import { contactsFactor, type RopeContact } from './contacts.ts';
import type { HaulSettings } from './haul-settings.ts';
import { landing } from './landing.ts';
import { load } from './load.ts';
import { pulls, regripsPerPull } from './pulls.ts';
import { requireNumber } from './require-number.ts';
import { mainWithoutThrow, type RopeNeed, type RopeRun, ropeBelowEdge, ropeNeed } from './rope-need.ts';
import { type HaulTeam, haulTeam } from './team.ts';
import { type LoadPosition, type Tensions, tensions } from './tensions.ts';
import { clearField, throwByField, throwByRope } from './throw.ts';

/** The ground that a haul works on: angles in degrees, lengths in metres from the edge to the load. */
export interface HaulGround {
  readonly governingDeg: number;
  readonly lipDeg: number;
  readonly ropeLineM: number;
  readonly groundLengthM: number;
  /** All bends of the rope from the anchor or the turn to the load at the far end. */
  readonly contacts: readonly RopeContact[];
  /** Further positions of the load on its way up, each with its own angle and contacts; the far end is always counted. */
  readonly positions?: readonly LoadPosition[];
  /** Planned as high, over a step, or the book says so: the belay takes the full weight. */
  readonly fullBelay: boolean;
}

export interface HaulArrangement extends RopeRun {
  /** How often the hauling end turns before the hands; each turn costs one sheave. */
  readonly handTurns: number;
  /** What lies clear along the haul direction for the team to walk, metres. */
  readonly walkingRoomM: number;
  /** Rope at hand for the line that limits the throw: the main line built in, else the haul line, metres; null: not limited. */
  readonly throwRopeM: number | null;
}

/** A haul in numbers: kilonewtons, metres, people. */
export interface Haul {
  readonly contactsFactor: number;
  /** Main line at the edge, and the belay. */
  readonly tensionKn: Tensions;
  /** Main line beyond the change of direction while raising: over one sheave more in a turned haul. */
  readonly farKn: { readonly walking: number; readonly hanging: number };
  readonly actualAdvantage: number;
  /** At the hands of the team. */
  readonly pullKn: { readonly walking: number; readonly hanging: number };
  readonly team: HaulTeam;
  readonly throwM: number;
  readonly throwLimitedBy: 'field' | 'rope';
  readonly landingM: number;
  readonly liftedByHandM: number;
  readonly raiseM: number;
  readonly stretchM: number;
  /** Infinite where no pull gains anything. */
  readonly pulls: number;
  readonly resets: number;
  readonly walkM: number;
  readonly regripsPerPull: number;
  readonly ropeM: RopeNeed;
  /** The throw is long enough to work with. */
  readonly workable: boolean;
  /** Not over the most resets that the book calls practical. */
  readonly practical: boolean;
}

/**
 * Works out one haul, straight or turned:
 *
 * ```
 *  straight   load ~~~~ edge ◦──────── field ────────● anchor
 *
 *  turned     load ~~~~ edge ──── turn ◦
 *                                      │ field, along the road
 *                                      ● anchor
 * ```
 * Throws a `UserError` on a number that is missing or out of range.
 */
export function haul(ground: HaulGround, run: HaulArrangement, conditions: Conditions, settings: HaulSettings): Haul {
  checkInput(ground, run);
  const turned = run.kind === 'turned';
  const factor = contactsFactor(ground.contacts, settings);
  const far: LoadPosition = { angleDeg: ground.governingDeg, contactsFactor: factor };
  const steepness = { ...ground, positions: [far, ...(ground.positions ?? [])] };
  const tensionKn = tensions(load(settings), steepness, conditions, settings);
  const farKn = overSheaves(tensionKn, turned ? settings.pulleyEfficiency : 1);
  const advantage = actualAdvantage(run.advantage, settings.pulleyEfficiency, run.handTurns);
  const pullKn = overSheaves(farKn, advantage);

  const belowEdgeM = ropeBelowEdge(ground.ropeLineM, ground.groundLengthM, settings);
  const { throwM, throwLimitedBy } = throwOf(belowEdgeM, run, settings);
  const land = landing(run.kind, turned ? run.edgeToTurnM : run.fieldM, settings);
  const raiseM = ground.ropeLineM + land.landingM;
  const stretchM = settings.ropeStretch * (belowEdgeM + (turned ? run.edgeToTurnM : 0));
  const count = pulls(raiseM, stretchM, throwM, settings.sitBackM);
  const walkM = idealAdvantage(run.advantage) * throwM;
  return {
    contactsFactor: factor,
    tensionKn,
    farKn,
    actualAdvantage: advantage,
    pullKn,
    team: haulTeam(run.advantage, pullKn, settings),
    throwM,
    throwLimitedBy,
    ...land,
    raiseM,
    stretchM,
    pulls: count,
    resets: count - 1,
    walkM,
    regripsPerPull: regripsPerPull(walkM, run.walkingRoomM),
    ropeM: ropeNeed(belowEdgeM, run, throwM, settings),
    workable: throwM >= settings.leastThrowM && Number.isFinite(count),
    practical: count - 1 <= settings.mostResets,
  };
}

function checkInput(ground: HaulGround, run: HaulArrangement): void {
  const any = Number.POSITIVE_INFINITY;
  requireNumber('The governing angle', ground.governingDeg, 0, 90);
  requireNumber('The lip angle', ground.lipDeg, -90, 90);
  requireNumber('The rope line', ground.ropeLineM, 0, any);
  requireNumber('The ground length', ground.groundLengthM, 0, any);
  for (const { bendDeg, friction } of ground.contacts) {
    requireNumber('The bend of a contact', bendDeg, 0, 180);
    if (friction !== null) requireNumber('The friction of a contact', friction, 0, 2);
  }
  for (const { angleDeg, contactsFactor: factor } of ground.positions ?? []) {
    requireNumber('The angle at a position of the load', angleDeg, -90, 90);
    requireNumber('The contacts factor at a position of the load', factor, 1, any);
  }
  requireNumber('The distance from edge to turn', run.edgeToTurnM, 0, any);
  requireNumber('The haul field', run.fieldM, 0, any);
  requireNumber('The belay run', run.belayRunM, 0, any);
  requireNumber('The walking room', run.walkingRoomM, 0, any);
  requireNumber('The turns of the hauling end', run.handTurns, 0, 3);
  if (run.throwRopeM !== null) requireNumber('The rope at hand', run.throwRopeM, 0, any);
}

const overSheaves = (kn: { readonly walking: number; readonly hanging: number }, divisor: number) => ({
  walking: kn.walking / divisor,
  hanging: kn.hanging / divisor,
});

/** The throw is shortened by a short rope, never refused for it. */
function throwOf(
  belowEdgeM: number,
  run: HaulArrangement,
  settings: HaulSettings,
): { throwM: number; throwLimitedBy: 'field' | 'rope' } {
  const byFieldM = throwByField(run.advantage, [clearField(run.fieldM, settings)]);
  if (run.throwRopeM === null) return { throwM: byFieldM, throwLimitedBy: 'field' };
  const builtIn = run.system === 'built in';
  const takenM = builtIn ? mainWithoutThrow(belowEdgeM, run, settings) : settings.tailsM;
  const byRopeM = throwByRope(run.advantage, builtIn, run.throwRopeM - takenM);
  return byRopeM < byFieldM
    ? { throwM: byRopeM, throwLimitedBy: 'rope' }
    : { throwM: byFieldM, throwLimitedBy: 'field' };
}
