import type { Apparatus, AttachmentPoint } from '../book/index.ts';
import { type Footprint, forward } from './footprint.ts';

/** One attachment of a parked apparatus: where a rope is tied, local metres. */
export interface AttachmentPlace {
  readonly point: AttachmentPoint;
  readonly x: number;
  readonly y: number;
}

/** Two attachments of one end sit this far either side of the middle: on the frame rails, metres (common practice, no source). */
const RAIL_M = 0.4;

/** Where the attachments of a parked apparatus are: on its end lines, one in the middle, more spread over the frame rails. */
export function attachmentPlaces(
  { attachments }: Pick<Apparatus, 'attachments'>,
  parked: Footprint,
): AttachmentPlace[] {
  const [ux, uy] = forward(parked.headingDeg);
  return (['front', 'rear'] as const).flatMap((end) => {
    const along = (end === 'front' ? 1 : -1) * (parked.lengthM / 2);
    const own = attachments.filter((point) => point.end === end);
    return own.map((point, k) => {
      const right = own.length === 1 ? 0 : RAIL_M * ((2 * k) / (own.length - 1) - 1);
      return { point, x: parked.x + along * ux + right * uy, y: parked.y + along * uy - right * ux };
    });
  });
}
