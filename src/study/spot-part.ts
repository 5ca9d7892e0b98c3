import type { Apparatus } from '../book/index.ts';
import type { LocalPlane } from '../geo/index.ts';
import type { Layouts, Spot } from '../spots/index.ts';
import { positionOf } from './descent-part.ts';
import type { Pins } from './inputs.ts';
import { degrees, kilonewtons, metres } from './rounded.ts';
import type { StudySpot } from './study.ts';

/** Of the spots in no layout, one every so many metres of road is listed for each apparatus. */
const LISTED_EVERY_M = 10;

/**
 * The contract's spots: every one that a layout uses or somebody pinned, then of each apparatus one every 10 m of road, so that
 * a map can show where it may stand; a draft, which offers nothing to choose from, leaves those out.
 */
export function spotParts(
  found: Pick<Layouts, 'spots' | 'layouts'>,
  fleet: readonly Apparatus[],
  pins: Pins,
  plane: LocalPlane,
  whole: boolean,
): StudySpot[] {
  const used = new Set(found.layouts.flatMap(({ spotIds }) => spotIds));
  const pinned = new Set(Object.values(pins));
  const names = new Map(fleet.map(({ id, name }) => [id, name]));
  const listed = new Set<string>();
  const parts: StudySpot[] = [];
  for (const spot of found.spots) {
    const chosen = used.has(spot.id) || pinned.has(spot.id);
    const place = `${spot.apparatusId} ${Math.floor(spot.stationM / LISTED_EVERY_M)}`;
    if (!chosen && (!whole || listed.has(place))) continue;
    if (!chosen) listed.add(place);
    const name = names.get(spot.apparatusId) ?? spot.apparatusId;
    parts.push(spotPart(spot, name, pinned.has(spot.id), plane));
  }
  return parts.sort((a, b) => Number(used.has(b.id)) - Number(used.has(a.id)));
}

function spotPart(spot: Spot, apparatus: string, pinned: boolean, plane: LocalPlane): StudySpot {
  const { footprint } = spot;
  const or = (value: number | null, form: (value: number) => number): number | null =>
    value === null ? null : form(value);
  return {
    id: spot.id,
    apparatus,
    lengthM: metres(footprint.lengthM),
    widthM: metres(footprint.widthM),
    ...positionOf(plane, footprint.x, footprint.y),
    headingDeg: degrees(footprint.headingDeg),
    stationM: metres(spot.stationM),
    offsetM: metres(spot.offsetM),
    gradeDeg: or(spot.gradeDeg, degrees),
    crossfallDeg: or(spot.crossfallDeg, degrees),
    edgeClearanceM: or(spot.edgeClearanceM, metres),
    lanesBlocked: spot.lanes.blocked,
    holdKn: kilonewtons(spot.holdKn),
    use: spot.use,
    problems: spot.problems.map(({ code, severity, text, markId }) => ({ code, severity, text, markId })),
    workable: spot.workable,
    pinned,
  };
}
