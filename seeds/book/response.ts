import { lonLat } from '../position.ts';
import { area } from '../recipe.ts';

const at = (x: number, y: number): { lon: number; lat: number } => {
  const [lon, lat] = lonLat(area.west + x, area.south + y);
  return { lon, lat };
};

/** Two stations of an invented district. */
export const stations = [
  { id: 'st-1', name: 'Station 1, Lantern Creek', ...at(3480, 1240), phone: '555-0141', radio: 'Tamarrow 1' },
  { id: 'st-2', name: 'Station 2, Quarry Landing', ...at(95, 2480), phone: '555-0142', radio: 'Tamarrow 2' },
];

/** Lengths in metres, masses in kilograms, ratings in kilonewtons; generic vehicles. */
export const fleet = [
  apparatus('e1', 'Engine 1', 'engine', 'st-1', [9.2, 2.5, 5.1, 10.9], 15000, 4, [
    ['front tow eyes', 40],
    ['rear tow eyes', 40],
  ]),
  apparatus('e2', 'Engine 2', 'engine', 'st-2', [9.2, 2.5, 5.1, 10.9], 15000, 4, [
    ['front tow eyes', 40],
    ['rear tow eyes', 40],
  ]),
  apparatus('t1', 'Truck 1', 'truck', 'st-1', [11.6, 2.5, 6.1, 12.8], 21000, 4, [
    ['front tow eyes', 40],
    ['rear tow eyes', 40],
  ]),
  apparatus('r2', 'Light rig 2', 'light rig', 'st-2', [6.1, 2.1, 3.7, 7.6], 3000, 2, [['receiver shackle', 22]]),
];

function apparatus(
  id: string,
  name: string,
  type: string,
  station: string,
  [lengthM, widthM, wheelbaseM, turningRadiusM]: [number, number, number, number],
  emptyMassKg: number,
  crew: number,
  points: [string, number][],
) {
  const attachments = points.map(([where, ratedKn]) => ({ where, ratedKn }));
  return { id, name, type, station, lengthM, widthM, wheelbaseM, turningRadiusM, emptyMassKg, crew, attachments };
}

/** What rides on each; ropes by length. */
export const kit = [
  {
    on: 'e1',
    ropes: [rope('main', 60), rope('belay', 60)],
    items: {
      pulleys: 4,
      carabiners: 12,
      'progress captures': 2,
      'descent controls': 2,
      'edge rollers': 1,
      litter: 1,
      'anchor straps': 4,
    },
  },
  {
    on: 'e2',
    ropes: [rope('main', 60), rope('belay', 60)],
    items: {
      pulleys: 4,
      carabiners: 12,
      'progress captures': 2,
      'descent controls': 2,
      'edge mats': 2,
      'anchor straps': 4,
    },
  },
  {
    on: 't1',
    ropes: [rope('main', 90), rope('belay', 90), rope('haul', 45)],
    items: { pulleys: 6, carabiners: 20, litter: 1, 'edge rollers': 2 },
  },
  { on: 'r2', ropes: [rope('haul', 30)], items: { pulleys: 2, carabiners: 6, 'anchor straps': 2 } },
];

function rope(use: string, lengthM: number) {
  return { use, lengthM, diameterMm: 12.5 };
}

/** Who comes, with how many people, and when, in minutes after the first arrival. */
export const response = {
  areas: [
    {
      name: 'Lantern Creek Road',
      roads: ['Lantern Creek Road'],
      alarm: [
        unit('e1', 4, 0, 'first-arriving'),
        unit('e2', 4, 8, 'first alarm'),
        unit('medic-1', 2, 9, 'first alarm'),
        unit('battalion-1', 1, 10, 'first alarm'),
        unit('t1', 4, 12, 'first alarm'),
        unit('aid-north', 8, 25, 'mutual aid'),
      ],
    },
    {
      name: 'Cinder Grade and Old Quarry',
      roads: ['Cinder Grade Road', 'Old Quarry Spur'],
      alarm: [
        unit('e2', 4, 0, 'first-arriving'),
        unit('r2', 2, 1, 'first alarm'),
        unit('e1', 4, 11, 'first alarm'),
        unit('medic-1', 2, 13, 'first alarm'),
        unit('battalion-1', 1, 12, 'first alarm'),
        unit('t1', 4, 16, 'first alarm'),
        unit('aid-north', 8, 30, 'mutual aid'),
      ],
    },
  ],
  call: [
    { who: 'Technical rope team, Harrowfold', why: 'planned high', phone: '555-0190', radio: 'Harrowfold rope' },
    { who: 'Medical helicopter, coast base', why: 'landing zone by day', phone: '555-0191', radio: 'Coast air' },
  ],
};

function unit(id: string, people: number, atMin: number, alarm: string) {
  return { unit: id, people, atMin, alarm };
}
