import type { Apparatus, Mark } from '../../book/index.ts';
import type { LocalPlane } from '../../geo/index.ts';
import { type Anchor, type TreeSettings, treeIsNoGo } from '../../rigging/index.ts';
import { attachmentPlaces } from '../attachment-places.ts';
import { forward } from '../footprint.ts';
import type { Spot } from '../spot-types.ts';

/** Where a rope of a layout may be tied: an end of a parked apparatus, a tree or a rock. Metres on the plane of the site. */
export interface TiePlace {
  readonly id: string;
  readonly x: number;
  readonly y: number;
  /** Unit vector out of the end of the apparatus; 0, 0 for a mark. */
  readonly outX: number;
  readonly outY: number;
  readonly anchor: Anchor;
  /** Null for a mark. */
  readonly spot: Spot | null;
}

/** The ends of a parked apparatus that offer attachments of stated strength, tied to in the middle. */
export function spotTies(spot: Spot, apparatus: Apparatus): TiePlace[] {
  if (spot.fall === null || spot.use === 'blocker') return [];
  const rated = attachmentPlaces(apparatus, spot.footprint).filter(
    ({ point }) => point.ratedKn !== null && point.ratedKn > 0,
  );
  const anchor: Anchor = {
    kind: 'apparatus',
    id: spot.id,
    emptyMassKg: apparatus.emptyMassKg,
    attachmentKn: Math.min(...rated.map(({ point }) => point.ratedKn!)),
    attachments: rated.length,
    fall: spot.fall,
  };
  const [ux, uy] = forward(spot.footprint.headingDeg);
  return (['front', 'rear'] as const).flatMap((end) => {
    const own = rated.filter(({ point }) => point.end === end);
    if (own.length === 0) return [];
    const sign = end === 'front' ? 1 : -1;
    const x = own.reduce((sum, place) => sum + place.x, 0) / own.length;
    const y = own.reduce((sum, place) => sum + place.y, 0) / own.length;
    return [{ id: spot.id, x, y, outX: sign * ux, outY: sign * uy, anchor, spot }];
  });
}

/**
 * Marked trees and rocks; nothing else that is marked is ever an anchor. A tree too thin, or never measured, is left out
 * unless somebody pinned it.
 */
export function markTies(
  marks: readonly Mark[],
  plane: LocalPlane,
  settings: TreeSettings,
  pinned: readonly (string | undefined)[],
): TiePlace[] {
  return marks.flatMap(({ id, kind, geometry, trunkDiameterM }) => {
    if ((kind !== 'tree' && kind !== 'rock') || geometry.type !== 'Point') return [];
    const [lon, lat] = geometry.coordinates;
    const { x, y } = plane.toLocal({ lon, lat });
    const anchor: Anchor = kind === 'tree' ? { kind, id, trunkDiameterM } : { kind, id };
    if (anchor.kind === 'tree' && treeIsNoGo(anchor, settings) && !pinned.includes(id)) return [];
    return [{ id, x, y, outX: 0, outY: 0, anchor, spot: null }];
  });
}
