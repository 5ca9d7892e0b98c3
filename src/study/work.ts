import type { Bench, RoadPlace, RoadTraits, SightBothWays } from '../road/index.ts';
import type { Ground } from '../terrain/index.ts';
import type { FieldWork } from './field/field-value-work.ts';
import type { GroundInputs } from './inputs.ts';
import type { SideWork } from './side.ts';
import type { Standing } from './standing.ts';

/** The part of a study that hangs on the ground alone, and where apparatus can stand on it. */
export interface GroundWork {
  readonly inputs: GroundInputs;
  readonly ground: Ground;
  /** The finest raster's kind was guessed. */
  readonly doubted: boolean;
  readonly place: RoadPlace;
  readonly traits: RoadTraits;
  readonly bench: Bench;
  /** Element of the bench at the site. */
  readonly i: number;
  readonly structure: boolean;
  readonly side: SideWork;
  /** Both sides drop and none was named. */
  readonly bothDrop: boolean;
  /** How far drivers see the site; null where nothing drops. */
  readonly sight: SightBothWays | null;
  /** Null where no apparatus may be placed: no descent, a structure, screening only, a bench of assumed width. */
  readonly standing: Standing | null;
  /** Null where nothing was read on site. */
  readonly field: FieldWork | null;
  /** The bench before any reading changed it. */
  readonly computedBench: Bench;
}
