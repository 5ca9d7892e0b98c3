import * as v from 'valibot';
import { responseTiers } from '../response.ts';
import { count, deleted, id, idOrNone, ids, line, number } from './fields.ts';

/** One unit that comes to an area's alarm, minutes after the first unit there. */
export const arrival = v.strictObject({
  id,
  areaId: id,
  unit: line,
  apparatusId: idOrNone,
  atMin: number(0, 600),
  people: count(0, 100),
  tier: v.picklist(responseTiers),
  kitIds: ids,
  deleted,
});

export type ArrivalRecord = v.InferOutput<typeof arrival>;
