import type { Lack } from '../../book/index.ts';
import { degrees, metres } from '../rounded.ts';
import type { StudyReading } from '../study.ts';
import type { FieldQuantity } from './field-value-work.ts';

/** The contract's `field`: a row for each quantity that was read, in the order of the book's list. */
export const fieldPart = (quantities: readonly FieldQuantity[]): StudyReading[] => quantities.map(readingPart);

function readingPart({
  quantity,
  computed,
  counts,
  worst,
  readings,
  sigma,
  beyond,
  ...rest
}: FieldQuantity): StudyReading {
  const round = quantity.endsWith('Deg') ? degrees : metres;
  const pair = (two: readonly [number, number] | null, by: (value: number) => number): [number, number] | null =>
    two && [by(two[0]), by(two[1])];
  const known = computed.value !== null;
  // A longer straight haul than the ground has room for is not made by a tape.
  const taken = counts.how === 'measured' && known && !(quantity === 'edgeToAnchorM' && counts.betters);
  return {
    quantity,
    computed: known && Number.isFinite(computed.value) ? round(computed.value!) : null,
    computedRange: pair(computed.range, round),
    stretchM: pair(computed.stretchM, metres),
    measured: round(worst.reading.value),
    sigma: round(sigma),
    used: taken ? 'measured' : 'computed',
    betters: taken && counts.betters,
    ...{ tool: worst.tool, by: worst.by, on: worst.on, readings },
    reason: counts.reason,
    beyond,
    why: taken ? null : whyNot(counts.waiting?.lacks ?? [], readings, known, rest.awayM),
    awayM: rest.awayM === null ? null : metres(rest.awayM),
    elsewhere: rest.elsewhere,
  };
}

function whyNot(lacks: readonly Lack[], readings: number, known: boolean, awayM: number | null): string {
  if (!known) return 'nothing was computed that it could replace';
  if (lacks.includes('taken here'))
    return awayM === null
      ? 'it betters the result, and nobody noted where it was taken: take it again'
      : 'it betters the result, and not enough readings were taken at this very place: take it again';
  if (lacks.includes('second reading'))
    return readings < 2
      ? 'one reading, and it betters the result'
      : 'it betters the result, and two readings on the governing stretch by two people or on two days are asked for';
  if (lacks.includes('name and reason')) return 'it betters the result, and nobody has given name and reason';
  if (lacks.includes('computed anew')) return 'the computed value has changed since it was taken over';
  return 'only the edge and the bench make room';
}
