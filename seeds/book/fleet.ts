const pairs = (front: number | null, rear: number | null) => [
  { end: 'front', ratedKn: front },
  { end: 'front', ratedKn: front },
  { end: 'rear', ratedKn: rear },
  { end: 'rear', ratedKn: rear },
];

/** Generic vehicles: lengths in metres, masses in kilograms, strengths of the tow eyes in kilonewtons, two at each end. */
export const fleet = [
  apparatus('E1', 'Engine 1', 'engine', [9.2, 2.5, 5.1, 10.9], [15_000, 19_000], 40, 4, ['engine-1-kit']),
  apparatus('E2', 'Engine 2', 'engine', [9.2, 2.5, 5.1, 10.9], [15_000, 19_000], 40, 4, ['engine-2-kit']),
  apparatus('T1', 'Truck 1', 'truck', [11.6, 2.5, 6.1, 12.8], [21_000, 28_000], 40, 4, ['truck-kit']),
  apparatus('R2', 'Light rig 2', 'light rig', [6.1, 2.1, 3.7, 7.6], [3_000, 4_800], 22, 2, ['light-kit']),
  apparatus('M1', 'Medic 1', 'ambulance', [7.2, 2.4, 4.2, 8.2], [5_200, 7_500], null, 2, []),
];

function apparatus(
  id: string,
  name: string,
  kind: string,
  [lengthM, widthM, wheelbaseM, turningRadiusM]: [number, number, number, number],
  [emptyMassKg, grossMassKg]: [number, number],
  eyeKn: number | null,
  crew: number,
  kitIds: string[],
) {
  return {
    ...{ id, name, kind, lengthM, widthM, wheelbaseM, turningRadiusM, emptyMassKg, grossMassKg },
    attachments: eyeKn === null ? [] : pairs(eyeKn, eyeKn),
    crew,
    kitIds,
  };
}
