import * as v from 'valibot';
import { apparatusKinds, kitItemKinds, responseTiers } from '../../book/index.ts';

const within = (least: number, most: number) =>
  v.pipe(
    v.number(),
    v.finite('expected a finite number'),
    v.check((value) => value >= least && value <= most, `expected ${least} to ${most}`),
  );
const whole = (least: number, most: number) =>
  v.pipe(
    within(least, most),
    v.check((value) => Number.isInteger(value), 'expected a whole number'),
  );
const name = v.pipe(
  v.string(),
  v.check((text) => text.length > 0 && text.length <= 200, 'expected 1 to 200 characters'),
);
const nameOrNull = v.nullable(name);
const ratedKn = v.nullable(within(0, 500));

/** Bounds are those of anything that drives on roads: a figure outside them is a slip of the pen. */
const apparatus = v.strictObject({
  id: name,
  name,
  kind: v.picklist(apparatusKinds),
  lengthM: within(1, 30),
  widthM: within(0.5, 5),
  wheelbaseM: within(0.5, 20),
  turningRadiusM: within(1, 40),
  emptyMassKg: within(100, 80_000),
  grossMassKg: within(100, 80_000),
  attachments: v.array(v.strictObject({ end: v.picklist(['front', 'rear']), ratedKn })),
  crew: whole(0, 20),
  kitIds: v.array(name),
});

const kit = v.strictObject({
  id: name,
  name,
  ropes: v.array(
    v.strictObject({
      lengthM: within(1, 600),
      diameterMm: v.nullable(within(3, 30)),
      ratedKn,
      count: whole(1, 50),
    }),
  ),
  items: v.array(
    v.strictObject({
      kind: v.picklist(kitItemKinds),
      ratedKn,
      lengthM: v.nullable(within(0, 100)),
      count: whole(1, 500),
    }),
  ),
});

const station = v.strictObject({
  id: name,
  name,
  lon: within(-180, 180),
  lat: within(-90, 90),
  apparatusIds: v.array(name),
  kitIds: v.array(name),
  turnoutMin: within(0, 60),
  mutualAid: v.boolean(),
});

const arrival = v.strictObject({
  unit: name,
  apparatusId: nameOrNull,
  atMin: within(0, 600),
  people: whole(0, 100),
  tier: v.picklist(responseTiers),
  kitIds: v.array(name),
});

const planAs = v.array(v.picklist(['low', 'steep', 'high']));
const row = v.strictObject({
  id: name,
  when: v.strictObject({
    planAs: v.optional(planAs),
    ropeShort: v.optional(v.boolean()),
    peopleShort: v.optional(v.boolean()),
    water: v.optional(v.boolean()),
    laneClosed: v.optional(v.boolean()),
    hazards: v.optional(v.array(name)),
  }),
  resource: name,
  agency: nameOrNull,
  phone: nameOrNull,
  radio: nameOrNull,
  why: name,
});

export const fleetFile = v.strictObject({ schema: v.literal('brinkbook/demo-fleet@1'), fleet: v.array(apparatus) });
export const kitFile = v.strictObject({ schema: v.literal('brinkbook/demo-kit@1'), kits: v.array(kit) });
export const stationsFile = v.strictObject({
  schema: v.literal('brinkbook/demo-stations@1'),
  stations: v.array(station),
});
export const responseFile = v.strictObject({
  schema: v.literal('brinkbook/demo-response@1'),
  areas: v.array(v.strictObject({ name, roads: v.array(name), arrivals: v.array(arrival) })),
  response: v.array(row),
});
