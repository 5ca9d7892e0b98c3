type Tier = 'first arriving' | 'first alarm' | 'mutual aid';

/** Who comes, with how many people, and when, in minutes after the first arrival, by the road's alarm. */
export const areas = [
  {
    name: 'Lantern Creek Road',
    roads: ['Lantern Creek Road'],
    arrivals: [
      arrival('Engine 1', 'E1', 0, 4, 'first arriving', ['engine-1-kit']),
      arrival('Engine 2', 'E2', 8, 4, 'first alarm', ['engine-2-kit']),
      arrival('Medic 1', 'M1', 9, 2, 'first alarm', []),
      arrival('Battalion 1', null, 10, 1, 'first alarm', []),
      arrival('Truck 1', 'T1', 12, 4, 'first alarm', ['truck-kit']),
      arrival('Mutual aid north', null, 25, 8, 'mutual aid', ['aid-kit']),
    ],
  },
  {
    name: 'Cinder Grade and Old Quarry',
    roads: ['Cinder Grade Road', 'Old Quarry Spur'],
    arrivals: [
      arrival('Engine 2', 'E2', 0, 4, 'first arriving', ['engine-2-kit']),
      arrival('Light rig 2', 'R2', 1, 2, 'first alarm', ['light-kit']),
      arrival('Engine 1', 'E1', 11, 4, 'first alarm', ['engine-1-kit']),
      arrival('Battalion 1', null, 12, 1, 'first alarm', []),
      arrival('Medic 1', 'M1', 13, 2, 'first alarm', []),
      arrival('Truck 1', 'T1', 16, 4, 'first alarm', ['truck-kit']),
      arrival('Mutual aid north', null, 30, 8, 'mutual aid', ['aid-kit']),
    ],
  },
];

function arrival(
  unit: string,
  apparatusId: string | null,
  atMin: number,
  people: number,
  tier: Tier,
  kitIds: string[],
) {
  return { unit, apparatusId, atMin, people, tier, kitIds };
}

const rope = ['Technical rope team', 'Harrowfold', '555-0190', 'Harrowfold rope'] as const;

/** Whom to call for what; agencies and numbers are invented. */
export const response = [
  row('technical-high', { planAs: ['high'] }, rope, 'planned as high angle'),
  row('technical-rope', { ropeShort: true }, rope, 'rope does not reach'),
  row(
    'people',
    { peopleShort: true },
    ['Mutual aid', 'Tamarrow North', '555-0143', 'Tamarrow 4'],
    'fewer people than the haul needs',
  ),
  row(
    'water',
    { water: true },
    ['Water rescue team', 'Harrowfold', '555-0192', 'Harrowfold water'],
    'water at the end of the descent or on the way',
  ),
  row(
    'power',
    { hazards: ['wire', 'pole'] },
    ['Power company', 'Tamarrow Light', '555-0193', null],
    'wires at the site',
  ),
  row(
    'traffic',
    { laneClosed: true },
    ['Road department', 'Tamarrow roads', '555-0194', 'Tamarrow roads'],
    'a lane is closed',
  ),
];

function row(
  id: string,
  when: Record<string, unknown>,
  [resource, agency, phone, radio]: readonly [string, string, string | null, string | null],
  why: string,
) {
  return { id, when, resource, agency, phone, radio, why };
}
