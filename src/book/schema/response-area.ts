import * as v from 'valibot';
import { deleted, id, line } from './fields.ts';

/** Roads, by name, that one alarm serves. An area without roads serves every road that no other names. */
export const responseArea = v.strictObject({
  id,
  name: line,
  roads: v.optional(
    v.pipe(
      v.array(line),
      v.check((list) => list.length <= 2000, 'expected at most 2000 roads'),
    ),
    () => [],
  ),
  deleted,
});

export type ResponseAreaRecord = v.InferOutput<typeof responseArea>;
