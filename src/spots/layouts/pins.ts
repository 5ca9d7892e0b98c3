import { UserError } from '../../units/index.ts';
import { judgeSpot } from '../judge-spot.ts';
import { placeOfSpotId } from '../spot-id.ts';
import type { Spot } from '../spot-types.ts';
import { standingRoom } from '../standing-room.ts';
import type { LayoutQuestion } from './layout-types.ts';

/** The spots that the caller pinned, worked out whether or not an apparatus can stand there. Throws a `UserError` on an unknown id. */
export function pinnedSpots({ pins, marks, fleet, ground, rates }: LayoutQuestion): Spot[] {
  const ids = [...new Set([pins.anchor, pins.turn, pins.belay])].filter((id) => id !== undefined);
  return ids
    .filter((id) => !marks.some((mark) => mark.id === id))
    .map((id) => {
      const place = placeOfSpotId(id);
      const apparatus = fleet.find((one) => one.id === place.apparatusId);
      if (apparatus === undefined) {
        throw new UserError(
          'pin-apparatus',
          `The pinned spot "${id}" is for "${place.apparatusId}", which is not in the fleet; pin a spot of an apparatus that is.`,
        );
      }
      return judgeSpot(standingRoom(ground, apparatus), place, rates);
    });
}
