import { lonLat } from '../position.ts';
import { area } from '../recipe.ts';

const at = (x: number, y: number): { lon: number; lat: number } => {
  const [lon, lat] = lonLat(area.west + x, area.south + y);
  return { lon, lat };
};

/** Two stations of an invented district. */
export const stations = [
  {
    id: 'st-1',
    name: 'Station 1, Lantern Creek',
    ...at(3480, 1240),
    apparatusIds: ['E1', 'T1', 'M1'],
    kitIds: [],
    turnoutMin: 2,
    mutualAid: false,
  },
  {
    id: 'st-2',
    name: 'Station 2, Quarry Landing',
    ...at(95, 2480),
    apparatusIds: ['E2', 'R2'],
    kitIds: [],
    turnoutMin: 3,
    mutualAid: false,
  },
];
