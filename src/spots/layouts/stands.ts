import type { PointM } from '../../geo/index.ts';
import { type BenchSide, edgeKindAt } from '../../road/index.ts';
import { placeOnBench } from '../bench-place.ts';
import { endsAlike } from '../judge-spot.ts';
import type { Spot } from '../spot-types.ts';
import type { StandingGround } from '../standing-ground.ts';
import type { StandingRoom } from '../standing-room.ts';
import type { HaulFrame } from './haul-frame.ts';
import { LAYOUT_LIMITS } from './layout-limits.ts';
import type { Means, Unit } from './means.ts';
import { laneBits } from './people-there.ts';
import { spotTies, type TiePlace } from './tie-places.ts';

/** What may hold a line, with all that a search asks of it again and again. */
export interface Stand {
  readonly tie: TiePlace;
  readonly unit: Unit | null;
  /** Element of the bench at the tie, with fractions. */
  readonly element: number;
  /** From the edge along the road's drawing, metres. */
  readonly alongM: number;
  readonly lanes: number;
  /** Offset of the tie from the middle of the travelled way, metres, to the right. */
  readonly asideM: number;
  /** Where a corridor to it ends: the tie itself, beside a mark the nearest point that a corridor fits at. */
  readonly walk: PointM;
}

/** Where a unit was looked at finer than the candidates: its room, and the stands by station and decimetre. */
export interface FinePlaces {
  readonly room: StandingRoom;
  readonly stands: Map<string, readonly Stand[]>;
}

/** Where a unit may stand for a layout, one for each end that can hold a line; of two ways round that hold alike only one. */
export function unitStands(frame: HaulFrame, unit: Unit, spots: readonly Spot[], pinned: string | undefined): Stand[] {
  const own = spots.filter((spot) => spot.apparatusId === unit.apparatus.id && spot.workable);
  const kept =
    pinned !== undefined
      ? own.filter(({ id }) => id === pinned)
      : endsAlike(unit.apparatus)
        ? own.filter((spot) => facesWithTraffic(frame.ground, spot))
        : own;
  return kept.flatMap((spot) =>
    spotTies(spot, unit.apparatus).flatMap((tie) => standOf(frame, tie, unit, laneBits(spot.lanes.taken))),
  );
}

/** Trees and rocks as stands. */
export const markStands = (frame: HaulFrame, ties: readonly TiePlace[]): Stand[] =>
  ties.flatMap((tie) => standOf(frame, tie, null, 0)).filter((stand) => besideBench(frame, stand));

/** A mark past an edge that falls, or farther than this past the toe of a cut, holds no line of a haul along the bench, metres. */
const PAST_TOE_M = 3;

function besideBench({ bench }: HaulFrame, { element, tie }: Stand): boolean {
  const i = Math.max(0, Math.min(bench.count - 1, Math.round(element)));
  const offset = (tie.x - bench.x[i]) * bench.normalX[i] + (tie.y - bench.y[i]) * bench.normalY[i];
  const past = (side: BenchSide, sign: -1 | 1): boolean => {
    const end = edgeKindAt(side, i) === 'none' ? side.usableOffsetM[i] : side.edgeOffsetM[i];
    const more = edgeKindAt(side, i) === 'rise' && !(side.fallM[i] > 0) ? PAST_TOE_M : 0;
    return !(sign * offset <= sign * end + more);
  };
  return !past(bench.left, -1) && !past(bench.right, 1);
}

function standOf(frame: HaulFrame, tie: TiePlace, unit: Unit | null, lanes: number): Stand[] {
  const { bench, edge, road, element } = frame;
  const alongM = (tie.x - edge.x) * road.x + (tie.y - edge.y) * road.y;
  const at = new Float64Array(2);
  if (!placeOnBench(bench, tie.x, tie.y, element + alongM, at)) return [];
  const walk = tie.spot === null ? besideMark(frame, tie, at[0], at[1]) : tie;
  return walk === null
    ? []
    : [{ tie, unit, element: at[0], alongM, lanes, asideM: at[1] - bench.shiftM[Math.round(at[0])], walk }];
}

/** How far a team's corridor may lie beside a mark that stands at the rim of the bench, metres (common practice, no source). */
const BESIDE_MOST_M = 2.5;

function besideMark({ bench }: HaulFrame, { x, y }: TiePlace, element: number, offsetM: number): PointM | null {
  const i = Math.max(0, Math.min(bench.count - 1, Math.round(element)));
  const half = LAYOUT_LIMITS.corridorM / 2;
  const least = bench.left.usableOffsetM[i] + half;
  const most = bench.right.usableOffsetM[i] - half;
  if (!(least <= most)) return null;
  const aside = Math.min(most, Math.max(least, offsetM)) - offsetM;
  if (Math.abs(aside) > BESIDE_MOST_M) return null;
  return { x: x + aside * bench.normalX[i], y: y + aside * bench.normalY[i] };
}

/** Parked as it came: cab along the drawing on the right half of the road, against it on the left; nose-in cab first. */
function facesWithTraffic({ bench, traits }: StandingGround, { stationM, offsetM, footprint }: Spot): boolean {
  const i = Math.max(0, Math.min(bench.count - 1, Math.round(stationM) - bench.firstStationM));
  const right = offsetM >= bench.shiftM[i];
  const forwardWay = traits.oneway === 'forward' || (traits.oneway === 'no' && right);
  const heading = (footprint.headingDeg * Math.PI) / 180;
  const ahead = -Math.sin(heading) * bench.normalY[i] + Math.cos(heading) * bench.normalX[i];
  if (Math.abs(ahead) < 0.1) {
    const out = Math.sin(heading) * bench.normalX[i] + Math.cos(heading) * bench.normalY[i];
    return out > 0;
  }
  return ahead > 0 === forwardWay;
}

/** Pairs of different units that a turned haul may stand on, earliest first; with `likeOnce` of pairs that are alike only the first to come. */
export function unitPairs(means: Means, likeOnce: boolean): { readonly turn: Unit; readonly anchor: Unit }[] {
  const pairs = means.units.flatMap((turn) =>
    means.units.filter((anchor) => anchor !== turn).map((anchor) => ({ turn, anchor })),
  );
  return likeOnce ? firstOfEach(pairs, ({ turn, anchor }) => [turn, anchor]) : pairs;
}

/** Of choices that stand on units that are alike only the first to come, in order of the last arrival. */
export function firstOfEach<T>(choices: readonly T[], unitsOf: (choice: T) => readonly Unit[]): T[] {
  const last = (choice: T): number => Math.max(...unitsOf(choice).map(({ atMin }) => atMin));
  const first = (choice: T): number => unitsOf(choice)[0].atMin;
  const seen = new Set<string>();
  return [...choices]
    .sort((a, b) => last(a) - last(b) || first(a) - first(b))
    .filter((choice) => {
      const like = unitsOf(choice)
        .map(({ likeness }) => likeness)
        .join(' | ');
      if (seen.has(like)) return false;
      seen.add(like);
      return true;
    });
}
