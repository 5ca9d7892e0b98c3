import { type PlanForce, type PlanVector, turnForce } from '../../rigging/index.ts';
import { type AnchorLoad, clearLoad, noLoad, worseOf } from './anchor-load.ts';
import { ownBelayM } from './belay-place.ts';
import type { Bend } from './bends.ts';
import type { Candidate } from './candidate.ts';
import type { SystemChoice } from './choose-system.ts';
import { BLOCKED, type Corridor, MARK_SHORT_M } from './corridor.ts';
import type { Hope, Hopes } from './hope.ts';
import { bitCount, bitsBetween } from './people-there.ts';
import { leastFactor, mayTakePlace } from './prospect.ts';
import type { PullBase } from './pull-base.ts';
import { holdCounts } from './rank.ts';
import type { Search } from './search.ts';
import type { Stand } from './stands.ts';
import { knownCorridor } from './turned-corridor.ts';
import { addMainLoad } from './turned-load.ts';

/** An anchor faces its rope within 45°. */
const FACES = Math.SQRT1_2;
export const LEAST_FIELD_M = 3.5;

/** A bend under search: what every pair of tie and anchor has in common. */
export interface BendSearch {
  readonly bend: Bend;
  readonly along: -1 | 1;
  readonly base: PullBase;
  readonly contacts: Candidate['contacts'];
}

/** An anchor seen from a bend: field, unit vector towards it, the load on it. */
export interface Seen {
  readonly anchor: Stand;
  readonly fieldM: number;
  readonly ux: number;
  readonly uy: number;
  readonly load: AnchorLoad;
  /** What the bent line does to whatever holds the bend. */
  readonly bent: PlanForce;
  /** Arrival of the later of both apparatus, minutes, and the hopes of the field with the least belay. */
  readonly atMin: number;
  readonly hopes: Hopes;
  /** Lanes (bits) that it and the corridor to it surely take. */
  lanes: number;
  /** Once somebody asked. */
  corridor: Corridor | null;
  readonly hauls: Haul[];
}

/** A system with the minutes of its haul. */
export interface Exact {
  readonly choice: SystemChoice;
  readonly minutes: number;
}

/**
 * What a field comes to with so long a belay, on such lanes (bits) and with the apparatus there at a time, minutes: with the system that
 * ranks first, and with that of fewest resets where it is another one.
 */
export interface Haul extends Readonly<Record<'rank' | 'resets', Exact | null>> {
  readonly belayRunM: number;
  /** Clear way for the team, metres. */
  readonly roomM: number;
  readonly lanesTaken: number;
  readonly atMin: number;
}

/** The anchors whose field may still bring something, that face the bend and to which a corridor may run. */
export function anchorsSeen(search: Search, one: BendSearch, anchors: readonly Stand[], turnAtMin: number): Seen[] {
  const { mostFieldM, laneGrid, frame, marks, pinnedBelays } = search;
  const { bend, along, base } = one;
  const { road } = frame;
  const alone = marks.length > 0 || pinnedBelays !== null;
  const leastRunM = alone ? 0 : ownBelayM(bend.toEdgeM);
  const way = { x: along * road.x, y: along * road.y };
  const seen: Seen[] = [];
  let row: ReturnType<Search['hopesOf']> | null = null;
  for (const anchor of anchors) {
    const { tie, walk } = anchor;
    const dx = tie.x - bend.x;
    const dy = tie.y - bend.y;
    const fieldM = Math.sqrt(dx * dx + dy * dy);
    if (fieldM < LEAST_FIELD_M || fieldM > mostFieldM) continue;
    const ux = dx / fieldM;
    const uy = dy / fieldM;
    if (tie.spot !== null && -(ux * tie.outX + uy * tie.outY) < FACES) continue;
    const element = tie.spot === null ? anchor.element - along * MARK_SHORT_M : anchor.element;
    if (!inSight(bend, walk.x - bend.x, walk.y - bend.y, way, element, along)) continue;
    search.trace.inSight++;
    const across = tie.spot === null ? bend.asideM : anchor.asideM;
    const corridor = knownCorridor(search, bend, anchor);
    if (corridor?.lanes === BLOCKED) continue;
    const lanes =
      anchor.lanes |
      (corridor?.lanes ?? 0) |
      bitsBetween(
        laneGrid,
        Math.min(bend.asideM, across) - CORRIDOR_SURE_M,
        Math.max(bend.asideM, across) + CORRIDOR_SURE_M,
      );
    const atMin = Math.max(turnAtMin, anchor.unit?.atMin ?? 0);
    if (row === null || row.apparatusAtMin !== atMin) row = search.hopesOf(base, leastRunM, atMin);
    const hopes = row.of(fieldM);
    clearLoad(anchorLoad);
    addMainLoad(anchorLoad, search, anchor, base, ux, uy);
    if (!isOpen(search, one, hopes, lanes, anchorLoad)) continue;
    const load = { ...anchorLoad };
    const bent = turnForce(base.tensionKn.hanging, bend.towardEdge, base.farHangingKn, { x: ux, y: uy });
    seen.push({
      anchor,
      fieldM,
      ux,
      uy,
      load,
      bent,
      atMin,
      hopes,
      lanes,
      corridor,
      hauls: [],
    });
  }
  // What holds best first: the sooner it is found, the more is left out.
  return holdCounts(frame.grade) ? seen.sort((a, b) => b.load.holdFactor - a.load.holdFactor) : seen;
}

/** The load on the anchor in hand; nothing is made for those that lose. */
const anchorLoad = noLoad();

/** A corridor reaches at least this far to either side of its ends across the road, however it slants, metres. */
const CORRIDOR_SURE_M = 0.7;

/** True where some hope of a field is left on so many lanes (bits). */
export function isOpen(
  search: Search,
  one: BendSearch,
  { rank, resets }: Hopes,
  lanes: number,
  load: AnchorLoad,
): boolean {
  const fewest = bitCount(lanes);
  return (
    (rank !== null && mayTakePlace(search, one.along, rank, fewest, load)) ||
    (resets !== null && mayTakePlace(search, one.along, resets, fewest, load))
  );
}

function inSight(bend: Bend, dx: number, dy: number, way: PlanVector, element: number, along: -1 | 1): boolean {
  const { from, to } = bend.sight();
  const i = along > 0 ? Math.floor(element) : Math.ceil(element);
  const slope = (way.x * dy - way.y * dx) / (way.x * dx + way.y * dy);
  return slope >= from[i] && slope <= to[i];
}

/** An anchor that may take a place with some hold factor or more. */
export interface OpenAnchor {
  readonly far: Seen;
  readonly leastFactor: number;
}

/**
 * The anchors seen from a bend that may still take a place, for all ties of a verdict that take the same lanes (bits): a search
 * asks once for them all.
 */
export class OpenAnchors {
  readonly #known = new Map<number, readonly OpenAnchor[]>();

  constructor(
    readonly search: Search,
    readonly one: BendSearch,
    readonly seen: readonly Seen[],
  ) {}

  of(lanes: number, verdict: AnchorLoad['verdict']): readonly OpenAnchor[] {
    const key = 3 * lanes + verdict;
    const open = this.#known.get(key) ?? this.#open(lanes, verdict);
    this.#known.set(key, open);
    return open;
  }

  #open(lanes: number, verdict: AnchorLoad['verdict']): OpenAnchor[] {
    const { search, one } = this;
    const open: OpenAnchor[] = [];
    for (const far of this.seen) {
      const { hopes, load } = far;
      const fewest = bitCount(lanes | far.lanes);
      const worse = worseOf(load.verdict, verdict);
      const least = (hope: Hope | null): number =>
        hope === null ? Number.POSITIVE_INFINITY : leastFactor(search, one.along, hope, fewest, worse);
      const factor = Math.min(least(hopes.rank), least(hopes.resets));
      if (factor <= load.holdFactor && factor !== Number.POSITIVE_INFINITY) open.push({ far, leastFactor: factor });
    }
    return open;
  }
}
