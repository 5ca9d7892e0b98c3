import type { EdgeKind } from '../road/index.ts';
import type { SpotSettings } from './spot-settings.ts';

/** What decides how far the outer wheels stay from one end of the bench. */
export const SETBACK_RULES = [
  'level',
  'cut',
  'carriageway',
  'wet gravel',
  'off the carriageway',
  'steep below',
  'soft or wet',
  'barrier',
] as const;
export type SetbackRule = (typeof SETBACK_RULES)[number];

/** One end of the bench as far as wheels are concerned. */
export interface BenchEndTraits {
  readonly kind: EdgeKind;
  /** A rise with a drop behind it counts as an edge. */
  readonly dropBehind: boolean;
  /** The first 2 m below are over 45°, or a wall. */
  readonly steepBelow: boolean;
  /** Soft ground is marked beside it. */
  readonly soft: boolean;
}

/** What stands there, and on what. */
export interface StandingLoad {
  /** As it drives. */
  readonly grossMassKg: number;
  /** null where nobody knows: then it counts as gravel. */
  readonly paved: boolean | null;
  readonly wet: boolean;
}

/** Outer wheels from the end of the bench, metres, on the carriageway and off it, and the rule behind each. */
export interface Setback {
  readonly onM: number;
  readonly offM: number;
  readonly onRule: SetbackRule;
  readonly offRule: SetbackRule;
  /** True where a narrow bench may bring `onM` down in mid-road. */
  readonly mayNarrow: boolean;
}

/** Setback of the outer wheels from one end of the bench (common practice, no source). */
export function setbackFrom(end: BenchEndTraits, load: StandingLoad, settings: SpotSettings): Setback {
  if (end.kind === 'none') return { onM: 0, offM: 0, onRule: 'level', offRule: 'level', mayNarrow: false };
  if (end.kind === 'rise' && !end.dropBehind) {
    return { onM: settings.toeM, offM: settings.toeM, onRule: 'cut', offRule: 'cut', mayNarrow: false };
  }
  const softOrWet = end.soft || load.wet;
  const firmM = load.grossMassKg > settings.heavyOverKg ? settings.heavyM : settings.lightM;
  const wetGravel = load.wet && load.paved !== true;
  const roadM = wetGravel ? Math.max(settings.gravelWetM, settings.carriagewayM) : settings.carriagewayM;
  const offM = Math.max(roadM, softOrWet ? firmM * settings.softOrWetFactor : firmM);
  const offRule = end.steepBelow ? 'steep below' : softOrWet ? 'soft or wet' : 'off the carriageway';
  if (end.steepBelow) return { onM: offM, offM, onRule: offRule, offRule, mayNarrow: false };
  return { onM: roadM, offM, onRule: wetGravel ? 'wet gravel' : 'carriageway', offRule, mayNarrow: true };
}

/**
 * Setback on the carriageway of a bench that may be too narrow for it: what lies free beside the wheels in mid-road less
 * the room to steer there, never under the least, never over the setback itself.
 *
 * @param spareM width left on this side when the apparatus stands in mid-road, metres
 */
export const narrowSetbackM = (onM: number, spareM: number, settings: SpotSettings): number =>
  Math.max(Math.min(onM, settings.narrowLeastM), Math.min(onM, spareM - settings.steerM));
