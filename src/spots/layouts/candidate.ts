import type { Contact } from '../../descent/index.ts';
import type { PointM } from '../../geo/index.ts';
import type { SystemChoice } from './choose-system.ts';
import type { Unit } from './means.ts';
import type { PullBase } from './pull-base.ts';
import type { RankKey } from './rank.ts';
import type { TiePlace } from './tie-places.ts';

/** An arrangement that a search found: places, system and what it ranks by. Metres on the plane of the site. */
export interface Candidate {
  readonly kind: 'straight' | 'turned';
  readonly along: -1 | 0 | 1;
  readonly anchor: TiePlace;
  readonly turn: { readonly tie: TiePlace; readonly bend: PointM } | null;
  readonly belay: BelayPlace;
  readonly handTurn: { readonly tie: TiePlace; readonly bend: PointM; readonly way: PointM } | null;
  readonly base: PullBase;
  readonly contacts: readonly Contact[];
  readonly fieldM: number;
  readonly roomM: number;
  readonly choice: SystemChoice;
  /** What its system was chosen by. */
  readonly by: 'rank' | 'resets';
  /** Bits, one a lane, counted from the left of the drawing. */
  readonly lanesTaken: number;
  readonly apparatusAtMin: number;
  readonly key: RankKey;
}

/** Where the belay is tied, and the rope from the edge to its device, metres. */
export interface BelayPlace {
  readonly tie: TiePlace;
  readonly runM: number;
  /** Apparatus that is there for the belay alone, the lanes that it takes (bits) and its arrival; null, 0, 0 for any other. */
  readonly unit: Unit | null;
  readonly lanes: number;
  readonly atMin: number;
}
