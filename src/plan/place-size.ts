import { landingZoneShort, landingZoneSideM, type SupportPlaceRecord } from '../book/index.ts';
import { formatLength, formatLengthFigure, type UnitSystem } from '../units/index.ts';

/** "150 × 110 ft, too small by night (125 ft each way)"; empty where no side is known. Sizes are rounded down. */
export function placeSizeWords(
  place: Pick<SupportPlaceRecord, 'kind' | 'lengthM' | 'widthM'>,
  units: UnitSystem,
): string {
  const { kind, lengthM, widthM } = place;
  if (lengthM === null || widthM === null) return kind === 'landing zone' ? 'size not taken' : '';
  const size = `${formatLengthFigure(lengthM, units, 'down')} × ${formatLength(widthM, units, 'down')}`;
  const short = kind === 'landing zone' ? landingZoneShort(place) : 'never';
  if (short === 'never' || short === null) return size;
  const asked = `${formatLength(landingZoneSideM[short], units, 'up')} each way asked for`;
  return `${size}, too small${short === 'night' ? ' by night' : ''} (${asked})`;
}
