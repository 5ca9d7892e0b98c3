import { geodesicM, type LonLat } from '../../geo/index.ts';
import { FOOT_M } from '../../units/index.ts';
import type { Route } from '../routes.ts';
import { stationOnRoute } from './station-on-route.ts';

/** Metres in a mile: 5,280 international feet, exact. [source: derived] */
export const MILE_M = 5280 * FOOT_M;

/** A post as somebody read it: its number and where it stands, WGS 84. */
export interface MilePost {
  readonly mile: number;
  readonly at: LonLat;
}

/**
 * How the miles run between two neighbouring posts: "even" where road and posts agree; "jump" where they do not (the road was
 * moved, or the numbers start anew); "gap" where posts are missing between.
 */
export type StretchKind = 'even' | 'jump' | 'gap';

/** The road between two neighbouring posts, stations rising; the mile may rise or fall along it. */
export interface Stretch {
  readonly fromM: number;
  readonly toM: number;
  readonly fromMile: number;
  readonly toMile: number;
  readonly kind: StretchKind;
  /** How far a place told by its mile may lie from it along the road, metres either way. */
  readonly withinM: number;
}

/** A route with its posts. `off` are posts that stand too far from the road to count, `same` those that share a place. */
export interface Calibration {
  readonly stretches: readonly Stretch[];
  readonly off: readonly (MilePost & { readonly awayM: number })[];
  readonly same: readonly MilePost[];
}

/** A post farther than this from the road line does not belong to it, metres: the line itself may lie 15 m off. */
const BESIDE_M = 40;
/** Two posts nearer than this to each other along the road cannot be told apart, metres. */
const APART_M = 5;
/** Road and numbers disagree beyond this share of the posted length … */
const JUMP_SHARE = 0.1;
/** … and by more than this, metres. */
const JUMP_M = 50;
/** Posts are missing where neighbours differ by more than this, miles: posts stand each mile, or nearer. */
const GAP_MILES = 1.05;
/** A post is read and placed to about this, metres. */
const POST_M = 15;

/** Puts posts on a route, in the order of the road. Posts off the road and doubled ones are told, not used. */
export function calibrate(route: Route, posts: readonly MilePost[]): Calibration {
  const off: (MilePost & { awayM: number })[] = [];
  const same: MilePost[] = [];
  const placed: { post: MilePost; stationM: number }[] = [];
  for (const post of posts) {
    const { stationM, awayM } = stationOnRoute(route, post.at);
    if (awayM > BESIDE_M) off.push({ ...post, awayM });
    else placed.push({ post, stationM });
  }
  placed.sort((a, b) => a.stationM - b.stationM || a.post.mile - b.post.mile);
  const kept: { post: MilePost; stationM: number }[] = [];
  for (const next of placed) {
    const before = kept.at(-1);
    if (before && isSamePost(before, next)) same.push(next.post);
    else kept.push(next);
  }
  const stretches = kept.slice(1).map((to, i) => stretchOf(kept[i]!, to));
  return { stretches, off, same };
}

const isSamePost = (a: { post: MilePost; stationM: number }, b: { post: MilePost; stationM: number }): boolean =>
  b.stationM - a.stationM < APART_M && a.post.mile === b.post.mile && geodesicM(a.post.at, b.post.at) < 2 * BESIDE_M;

function stretchOf(from: { post: MilePost; stationM: number }, to: { post: MilePost; stationM: number }): Stretch {
  const roadM = to.stationM - from.stationM;
  const miles = Math.abs(to.post.mile - from.post.mile);
  const postedM = miles * MILE_M;
  const off = Math.abs(roadM - postedM);
  const jumps = off > JUMP_M && off > JUMP_SHARE * postedM;
  const kind: StretchKind = jumps ? 'jump' : miles > GAP_MILES ? 'gap' : 'even';
  return {
    fromM: from.stationM,
    toM: to.stationM,
    fromMile: from.post.mile,
    toMile: to.post.mile,
    kind,
    // A jump's place is unknown: the whole disagreement may lie on either side of the place.
    withinM: POST_M + (jumps ? Math.min(off, roadM) : off / 2),
  };
}
