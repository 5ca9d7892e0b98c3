import * as v from 'valibot';
import { deleted, id, line, number } from './fields.ts';

/** An angle rule of the district's own, beside the shipped ones. The two limits are one value, so that they never cross. */
export const angleRule = v.strictObject({
  id,
  name: line,
  limits: v.pipe(
    v.strictObject({ lowMaxDeg: number(5, 60), highMinDeg: number(5, 80) }),
    v.check(({ lowMaxDeg, highMinDeg }) => lowMaxDeg <= highMinDeg, 'expected lowMaxDeg not over highMinDeg'),
  ),
  source: line,
  deleted,
});

export type AngleRuleRecord = v.InferOutput<typeof angleRule>;
