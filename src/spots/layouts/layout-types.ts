import type { Apparatus, Kit, Mark, Rates, UnitArrival } from '../../book/index.ts';
import type { Contact, Descent } from '../../descent/index.ts';
import type { LocalPlane, PointM } from '../../geo/index.ts';
import type {
  ForceCheck,
  Governing,
  Haul,
  HaulArrangement,
  HaulGround,
  HaulPeople,
  Minutes,
  Reason,
  RopeFits,
} from '../../rigging/index.ts';
import type { ClosureKind } from '../closure.ts';
import type { Spot } from '../spot-types.ts';
import type { StandingGround } from '../standing-ground.ts';
import type { RankKey } from './rank.ts';

/** What layouts are sought for. Everything on the plane of the site, metres; conditions are those of `ground`. */
export interface LayoutQuestion {
  /** With its site; kept across searches while bench, marks and conditions stay. */
  readonly ground: StandingGround;
  readonly descent: Descent;
  /** Apparatus that may be used; one that no arrival brings is left out. */
  readonly fleet: readonly Apparatus[];
  readonly arrivals: readonly UnitArrival[];
  readonly kits: readonly Kit[];
  /** Trees and rocks among them may be anchors. */
  readonly marks: readonly Mark[];
  readonly plane: LocalPlane;
  readonly rates: Rates;
  readonly patients: number;
  /** Of the ground under bench and descent: then nothing is sought. */
  readonly screeningOnly: boolean;
  /** The book has the belay take the full weight everywhere, not only where planned as high or over a step. */
  readonly fullBelay?: boolean;
  readonly pins: LayoutPins;
  /** How much nearer to the road than computed somebody measured the edge, metres: a barrier stays as far from it. */
  readonly edgeNearerM?: number;
  /** What somebody measured of the room; nothing reaches farther. */
  readonly room?: LayoutRoom;
  /**
   * A quick look for a point that moves: over the spots given and a part of the bends, nothing looked round more finely. Every layout
   * of it is one that the whole search weighs too, so none ranks before the best of that. Why a kind of haul is missing is not told.
   */
  readonly draft?: boolean;
  /** Candidates already found for this ground and fleet (`layoutSpots`); found anew where left out. */
  readonly spots?: readonly Spot[];
}

/** Room as measured on site, metres; what was not measured is left out. */
export interface LayoutRoom {
  /** From the edge to the anchor of a straight haul, at most. */
  readonly straightM?: number;
  /** Clear road from the edge back along the drawing, and on along it. */
  readonly beforeM?: number;
  readonly afterM?: number;
}

/** Ids of spots or marks that somebody fixed; everything else is worked out around them. */
export interface LayoutPins {
  readonly anchor?: string;
  readonly turn?: string;
  readonly belay?: string;
}

export interface Layouts {
  /** Candidate spots, with every pinned one, workable or not. */
  readonly spots: readonly Spot[];
  /** By rank, best first; ranks count from 1. */
  readonly layouts: readonly Layout[];
  /** One sentence each on why there is no such layout; null where there is one. */
  readonly noStraight: string | null;
  readonly noTurned: string | null;
}

/** What a rope is tied to: the id of a spot or a mark; for a spot its apparatus. */
export interface Tie {
  readonly id: string;
  readonly kind: 'apparatus' | 'tree' | 'rock';
  readonly apparatusId: string | null;
  /** Where the rope is tied. */
  readonly at: PointM;
}

/** A complete haul arrangement, worked out. Lengths in metres, forces in kilonewtons, points on the plane of the site. */
export interface Layout {
  /** The same arrangement always bears the same id. */
  readonly id: string;
  readonly kind: 'straight' | 'turned';
  readonly edge: PointM;
  /** Of the haul system; in a straight haul also of device and capture. */
  readonly anchor: Tie;
  /** Change of direction: what it is tied to, and where the main line bends. */
  readonly turn: (Tie & { readonly bend: PointM }) | null;
  /** Never missing. `sharesWith`: id of the spot or mark that another line is tied to as well. */
  readonly belay: Tie & { readonly sharesWith: string | null };
  /** Where the hauling end of a straight haul turns along the road, and its own anchor. */
  readonly handTurn: (Tie & { readonly bend: PointM }) | null;
  /** Along the drawing of the road (1) or against it (−1) seen from the edge: where the anchor or the team lies; 0 for neither. */
  readonly along: -1 | 0 | 1;
  /** Ids of the spots that the layout uses. */
  readonly spotIds: readonly string[];
  /** Arrival of the last apparatus that it uses, minutes; 0 where it needs the first or none. */
  readonly apparatusAtMin: number;
  readonly ground: HaulGround;
  /** Bends of over 5° between the last bend before the edge and the load, by distance from the edge. */
  readonly contacts: readonly Contact[];
  readonly run: HaulArrangement;
  readonly haul: Haul;
  readonly fits: RopeFits;
  /** One rope a line is there before rigging ends. */
  readonly kitAtHand: boolean;
  /** Where ropes are short: how the slope is taken in stages; null where none are needed or none can be told. */
  readonly stages: readonly StagePlan[] | null;
  /** On anchors, turn and belay, then on the gear. */
  readonly forces: readonly ForceCheck[];
  /** Over anchors, turn and belay. */
  readonly governing: Governing;
  readonly people: HaulPeople;
  readonly minutes: Minutes;
  /** Lanes that spots and haul corridor take, counted from the left of the drawing, from 0. */
  readonly lanesTaken: readonly number[];
  readonly lanesBlocked: number;
  readonly closure: ClosureKind;
  /** Angle between the two legs of the main line, degrees, 180 straight on; null in a straight haul. */
  readonly turnAngleDeg: number | null;
  /** Ground nobody stands on, a closed ring. */
  readonly keepOut: readonly PointM[];
  /** From 1. */
  readonly rank: number;
  readonly key: RankKey;
  /** Sentences; the step that decided the rank first. */
  readonly why: readonly string[];
  readonly reasons: readonly Reason[];
}

/** The slope in stages with ropes of one length: where each but the last may begin. */
export interface StagePlan {
  readonly count: number;
  readonly ropeLengthM: number;
  /** Distances along the descent, metres; fewer than `count` − 1 where no place for one is known. */
  readonly at: readonly { readonly distanceM: number; readonly what: string }[];
}
