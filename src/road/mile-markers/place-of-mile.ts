import type { LonLat } from '../../geo/index.ts';
import { ok, type Result, refuse, thousands, UserError } from '../../units/index.ts';
import type { Route } from '../routes.ts';
import type { Calibration, Stretch } from './calibrate.ts';
import { positionOnRoute } from './station-on-route.ts';

/** A place that carries a mile: where it lies, how far off along the road it may be, and what to tell beside it. */
export interface MilePlace {
  readonly stationM: number;
  readonly position: LonLat;
  readonly withinM: number;
  /** A sentence where the posts beside the place do not agree with the road, or are missing; null where they do. */
  readonly note: string | null;
}

/**
 * Every place of a route that carries a mile, in road order: several where the numbers start anew. Refuses a mile beyond the
 * first or last post: nothing is shared out beyond a neighbour.
 */
export function placesOfMile(route: Route, { stretches }: Calibration, mile: number): Result<readonly MilePlace[]> {
  const name = route.name ?? 'This road';
  if (stretches.length === 0) {
    return refuse(
      new UserError('no-posts', `${name} has no two mile markers in the book; give a site name or a position instead.`),
    );
  }
  const places: MilePlace[] = [];
  for (const stretch of stretches) {
    const { fromM, toM, fromMile, toMile } = stretch;
    const low = Math.min(fromMile, toMile);
    const high = Math.max(fromMile, toMile);
    if (mile < low || mile > high) continue;
    const share = fromMile === toMile ? 0.5 : (mile - fromMile) / (toMile - fromMile);
    const stationM = fromM + share * (toM - fromM);
    // A post ends one stretch and begins the next: one place.
    if (places.some((place) => Math.abs(place.stationM - stationM) < 1)) continue;
    const atPost = share === 0 || share === 1;
    places.push({
      stationM,
      position: positionOnRoute(route, stationM),
      withinM: atPost ? POST_M : stretch.withinM,
      note: atPost ? null : noteOf(stretch),
    });
  }
  if (places.length > 0) return ok(places);
  const miles = stretches.flatMap(({ fromMile, toMile }) => [fromMile, toMile]);
  const range = `${mileText(Math.min(...miles))} to ${mileText(Math.max(...miles))}`;
  return refuse(
    new UserError(
      'no-mile',
      `${name} has no mile ${mileText(mile)}: its markers run from ${range}, and nothing is guessed beyond them or across a break.`,
    ),
  );
}

/** A place at a post itself is as good as the post, metres. */
const POST_M = 15;

/** What has to be told where a mile falls between two posts that do not agree with the road. */
export function noteOf({ kind, fromMile, toMile, fromM, toM }: Stretch): string | null {
  const low = mileText(Math.min(fromMile, toMile));
  const high = mileText(Math.max(fromMile, toMile));
  if (kind === 'gap') return `No marker stands between ${low} and ${high}: the place is shared out between them.`;
  if (kind === 'even') return null;
  const road = thousands(Math.round(toM - fromM));
  return `The markers ${low} and ${high} stand ${road} m apart along the road, which is not what they say: the place may be well off.`;
}

/** A mile as posts write it: up to two decimals, no trailing zeros. */
export const mileText = (mile: number): string => String(Math.round(mile * 100) / 100);
