import { FOOT_M } from '../units/index.ts';

export const apparatusKinds = ['engine', 'truck', 'light rig', 'ambulance', 'command vehicle'] as const;

/** What a district parks at a roadside. Lengths in metres, masses in kilograms, strengths in kilonewtons. */
export interface Apparatus {
  readonly id: string;
  readonly name: string;
  readonly kind: (typeof apparatusKinds)[number];
  readonly lengthM: number;
  readonly widthM: number;
  readonly wheelbaseM: number;
  readonly turningRadiusM: number;
  /** Without water, people and gear: what holds a pull. */
  readonly emptyMassKg: number;
  /** As it drives: what presses on a shoulder. */
  readonly grossMassKg: number;
  readonly attachments: readonly AttachmentPoint[];
  readonly crew: number;
  readonly kitIds: readonly string[];
}

/**
 * Frame tow eye or built-in anchor point, one entry a point. Bumpers and hitch balls are no attachment points
 * [source: rescue-team-anchor-sheet]. Strength null where nobody stated it: then it meets no factor.
 */
export interface AttachmentPoint {
  readonly end: 'front' | 'rear';
  readonly ratedKn: number | null;
}

const INCH_M = 0.0254;
const POUND_KG = 0.45359237;

const eyes = (ratedKn: number): AttachmentPoint[] => [
  { end: 'front', ratedKn },
  { end: 'front', ratedKn },
  { end: 'rear', ratedKn },
  { end: 'rear', ratedKn },
];

/**
 * Shipped fleet, to be replaced by the district's own. Outlines and gross masses of engine, truck and ambulance after a published
 * fleet table [source: city-fleet-table]; empty masses, attachment strengths, truck wheelbase and turning radius, and the light
 * rig are common practice, no source.
 */
export const defaultFleet: readonly Apparatus[] = [
  engine('E1', 'Engine 1'),
  engine('E2', 'Engine 2'),
  truck(),
  lightRig(),
  ambulance(),
];

function engine(id: string, name: string): Apparatus {
  return {
    id,
    name,
    kind: 'engine',
    lengthM: 32 * FOOT_M,
    widthM: 9.75 * FOOT_M,
    wheelbaseM: 201 * INCH_M,
    turningRadiusM: (35 + 10 / 12) * FOOT_M,
    emptyMassKg: 15_000,
    grossMassKg: 41_000 * POUND_KG,
    attachments: eyes(40),
    crew: 4,
    kitIds: ['engine-kit'],
  };
}

function truck(): Apparatus {
  return {
    id: 'T1',
    name: 'Truck 1',
    kind: 'truck',
    lengthM: 48 * FOOT_M,
    widthM: 10 * FOOT_M,
    wheelbaseM: 6.5,
    turningRadiusM: 13,
    emptyMassKg: 24_000,
    grossMassKg: 69_100 * POUND_KG,
    attachments: eyes(40),
    crew: 4,
    kitIds: [],
  };
}

function lightRig(): Apparatus {
  return {
    id: 'R1',
    name: 'Light rig 1',
    kind: 'light rig',
    lengthM: 6.5,
    widthM: 2.4,
    wheelbaseM: 4,
    turningRadiusM: 8,
    emptyMassKg: 3_000,
    grossMassKg: 5_000,
    attachments: eyes(20),
    crew: 2,
    kitIds: [],
  };
}

function ambulance(): Apparatus {
  return {
    id: 'M1',
    name: 'Medic 1',
    kind: 'ambulance',
    lengthM: 24.5 * FOOT_M,
    widthM: 9 * FOOT_M,
    wheelbaseM: 4.3,
    turningRadiusM: 8.5,
    emptyMassKg: 6_000,
    grossMassKg: 20_000 * POUND_KG,
    attachments: [],
    crew: 2,
    kitIds: [],
  };
}
