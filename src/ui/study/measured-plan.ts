import { classOf } from '../../book/index.ts';
import type { Study } from '../../study/index.ts';
import { formatDegrees } from '../../units/index.ts';
import type { TakenRow } from './taken-rows.ts';

const order = ['low', 'steep', 'high'] as const;

/** A measured angle that asks for a steeper plan than the computed one, as a sentence; null where none does. */
export function measuredPlan({ angle }: Study, rows: readonly TakenRow[]): string | null {
  const row = rows.find(({ quantity }) => quantity === 'angleDeg');
  if (!angle || row?.counts.how !== 'measured' || row.counts.value === null) return null;
  const measured = classOf(row.counts.value, { ...angle.rule, source: '' });
  if (order.indexOf(measured) <= order.indexOf(angle.planAs)) return null;
  return `Measured ${formatDegrees(row.counts.value)} on the ground: plan as ${measured}, whatever the computed figures below say.`;
}
