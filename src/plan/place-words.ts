import type { SupportPlaceRecord } from '../book/index.ts';
import { formatDegreesMinutes, type LonLat, localPlane } from '../geo/index.ts';
import { MILE_M } from '../road/index.ts';
import { azimuthOf, compassWord, formatLength, type UnitSystem } from '../units/index.ts';
import { placeSizeWords } from './place-size.ts';

/** What is said of a landing zone, a staging or a parking place. */
export type ShownPlace = Pick<
  SupportPlaceRecord,
  'kind' | 'name' | 'at' | 'vehicles' | 'lengthM' | 'widthM' | 'hazards' | 'on'
>;

/** A surveyed place with its distance and direction from the site, its size and hazards, and its coordinates; no full stop. */
export function placeWords(site: LonLat, place: ShownPlace, units: UnitSystem): string {
  const { kind, name, at, vehicles, hazards, on } = place;
  const { x, y } = localPlane(site).toLocal(at);
  const words = name.toLowerCase() === kind ? capital(kind) : `${capital(kind)} ${name}`;
  const parts = [
    `${words}, ${farWords(Math.hypot(x, y), units)} ${compassWord(azimuthOf(x, y))} in a straight line`,
    vehicles === null ? '' : `${vehicles} vehicles`,
    placeSizeWords(place, units),
    hazards.trim() && `hazards: ${hazards.trim()}`,
    on === null ? '' : `seen ${on}`,
  ];
  return `${parts.filter(Boolean).join(', ')}: ${formatDegreesMinutes(at)}`;
}

function farWords(metres: number, units: UnitSystem): string {
  if (units === 'us' && metres > 300) return `${(metres / MILE_M).toFixed(1)} mi`;
  return metres > 1000 ? `${(metres / 1000).toFixed(1)} km` : formatLength(metres, units);
}

const capital = (word: string): string => word.charAt(0).toUpperCase() + word.slice(1);
