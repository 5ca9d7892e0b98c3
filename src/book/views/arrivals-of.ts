import { defaultArrivals, type UnitArrival } from '../response.ts';
import { type Book, live } from '../schema/index.ts';
import { type Given, given } from './given.ts';

/**
 * Who comes to a road, earliest first: the units of the area that names it, else of the areas without roads. A road that no area
 * serves gets the shipped arrivals only where the book holds no arrivals at all; else nobody comes.
 */
export function arrivalsOf(book: Book, roadName: string | null): Given<readonly UnitArrival[]> {
  const areas = live(book, 'responseAreas');
  const naming = areas.filter(({ roads }) => roadName !== null && roads.includes(roadName));
  const serving = naming.length > 0 ? naming : areas.filter(({ roads }) => roads.length === 0);
  const all = live(book, 'arrivals');
  const units = all
    .filter(({ areaId }) => serving.some(({ id }) => id === areaId))
    .sort((a, b) => a.atMin - b.atMin || (a.id < b.id ? -1 : 1))
    .map(({ unit, apparatusId, atMin, people, tier, kitIds }) => ({ unit, apparatusId, atMin, people, tier, kitIds }));
  return all.length > 0 ? { value: units, shipped: false } : given(units, defaultArrivals);
}
