import { type AdvantageName, idealAdvantage } from './advantage.ts';
import { ceilWithin } from './ceil-within.ts';

export interface RopeSettings {
  /** Bridle between the main line and the litter, metres. */
  readonly bridleM: number;
  /** Tails and knots of a line, metres. */
  readonly tailsM: number;
  /** Main line beyond the capture of a turned haul with a line of its own: for the haul grab, metres. */
  readonly pastCaptureM: number;
}

/** How a haul is laid out, in lengths along the ropes, metres. */
export interface RopeRun {
  readonly kind: 'straight' | 'turned';
  readonly system: 'built in' | 'separate haul line';
  readonly advantage: AdvantageName;
  /** From edge to change of direction; 0 in a straight haul. */
  readonly edgeToTurnM: number;
  readonly fieldM: number;
  /** From edge to the belay's device. */
  readonly belayRunM: number;
}

/** Rope that a line must have at least, metres; haul null where the system is built into the main line. */
export interface RopeNeed {
  readonly main: number;
  readonly belay: number;
  readonly haul: number | null;
}

/** Rope below the edge, metres: the longer of the taut line and the ground, and the bridle. */
export const ropeBelowEdge = (ropeLineM: number, groundLengthM: number, settings: RopeSettings): number =>
  Math.max(ropeLineM, groundLengthM) + settings.bridleM;

/** Main line before any throw, metres: what a built-in system's throw is taken from. */
export function mainWithoutThrow(belowEdgeM: number, run: RopeRun, settings: RopeSettings): number {
  const toTurn = belowEdgeM + (run.kind === 'turned' ? run.edgeToTurnM : 0);
  if (run.kind === 'turned' && run.system === 'separate haul line') return toTurn + settings.pastCaptureM;
  return toTurn + run.fieldM + settings.tailsM;
}

/** Rope for main, belay and haul line at a throw in metres (counted along the ropes; n:1 built in takes (n − 1) × throw). */
export function ropeNeed(belowEdgeM: number, run: RopeRun, throwM: number, settings: RopeSettings): RopeNeed {
  const n = idealAdvantage(run.advantage);
  const builtIn = run.system === 'built in';
  return {
    main: mainWithoutThrow(belowEdgeM, run, settings) + (builtIn ? (n - 1) * throwM : 0),
    belay: belowEdgeM + run.belayRunM + settings.tailsM,
    haul: builtIn ? null : n * throwM + settings.tailsM,
  };
}

/** Fewest stages in which ropes of one length reach: each stage takes its own bridle, runs and tails from the rope; infinite if none reach. */
export function stagesNeeded(groundM: number, ropeM: number, takenPerStageM: number): number {
  const reachM = ropeM - takenPerStageM;
  return reachM > 0 ? Math.max(1, ceilWithin(groundM / reachM)) : Number.POSITIVE_INFINITY;
}
