import type { QuantityName } from '../../book/index.ts';
import type { LayoutRoom, Layouts } from '../../spots/index.ts';
import type { GroundWork } from '../work.ts';
import { type FieldQuantity, fieldQuantity } from './field-value-work.ts';

/** Clear road as read at the site; a reading of any length counts, since none is computed. */
export function clearRoad({ field }: GroundWork): LayoutRoom {
  const of = (name: QuantityName): number | null =>
    field?.quantities.find(({ quantity }) => quantity === name)?.counts.value ?? null;
  const beforeM = of('clearBeforeM');
  const afterM = of('clearAfterM');
  return { ...(beforeM === null ? {} : { beforeM }), ...(afterM === null ? {} : { afterM }) };
}

/**
 * The distance from the edge to the anchor of a straight haul as taped, against that of the best straight haul; null where nobody
 * taped it. A longer one is told but changes nothing: only the edge and the bench make room.
 */
export function tapedStraight({ inputs, field }: GroundWork, found: Layouts | null): FieldQuantity | null {
  if (!field || !inputs.field) return null;
  const haulFieldM = found?.layouts.find(({ kind }) => kind === 'straight')?.run.fieldM ?? null;
  return fieldQuantity(
    'edgeToAnchorM',
    { value: haulFieldM, stretchM: null, sigma: null, range: null },
    inputs.field,
    field.notBefore,
    inputs.at,
  );
}
