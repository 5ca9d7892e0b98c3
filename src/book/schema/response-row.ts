import * as v from 'valibot';
import { deleted, flagOrNone, id, line, lineOrNone, number } from './fields.ts';

const words = <const T extends readonly string[]>(list: T) =>
  v.optional(
    v.nullable(
      v.pipe(
        v.array(v.picklist(list)),
        v.check(
          (found) => found.length > 0 && new Set(found).size === found.length,
          'expected one or more, none twice',
        ),
      ),
    ),
    null,
  );
const hazards = v.optional(
  v.nullable(
    v.pipe(
      v.array(line),
      v.check((list) => list.length > 0 && list.length <= 50, 'expected 1 to 50 words'),
    ),
  ),
  null,
);

/** A line of the response table: every condition that is not null must hold for the resource to be called. */
export const responseRow = v.strictObject({
  id,
  /** Place in the table; equal ones go by id. */
  order: v.optional(number(-1e6, 1e6), 0),
  when: v.strictObject({
    planAs: words(['low', 'steep', 'high']),
    ropeShort: flagOrNone,
    peopleShort: flagOrNone,
    water: flagOrNone,
    laneClosed: flagOrNone,
    hazards,
  }),
  resource: line,
  agency: lineOrNone,
  phone: lineOrNone,
  radio: lineOrNone,
  why: v.optional(line, ''),
  deleted,
});

export type ResponseRowRecord = v.InferOutput<typeof responseRow>;
