import * as v from 'valibot';
import { day, deleted, id, line, notes, number, numberOrNone, positionOrNone } from './fields.ts';

/** What a reading can be of: its unit, its bounds and which way makes a rescue harder. */
export const quantities = {
  angleDeg: { worse: 'more', least: 0, most: 90, words: 'angle of the slope over 5 m' },
  lipAngleDeg: { worse: 'more', least: 0, most: 180, words: 'change of slope at the lip' },
  groundLengthM: { worse: 'more', least: 0, most: 1000, words: 'length along the ground, edge to patient' },
  dropM: { worse: 'more', least: 0, most: 1000, words: 'drop from edge to patient' },
  stepHeightM: { worse: 'more', least: 0, most: 300, words: 'height of a step' },
  slopeAboveDeg: { worse: 'more', least: 0, most: 90, words: 'angle of the slope above the road' },
  gradeDeg: { worse: 'more', least: 0, most: 30, words: 'grade of the road, up or down' },
  crossfallDeg: { worse: 'more', least: 0, most: 30, words: 'crossfall of the road, to either side' },
  edgeOffsetM: { worse: 'less', least: 0, most: 60, words: 'edge from the middle of the road' },
  edgeToAnchorM: { worse: 'less', least: 0, most: 200, words: 'edge to the anchor of a straight haul' },
  benchWidthM: { worse: 'less', least: 0, most: 120, words: 'width of the road bench' },
  clearBeforeM: { worse: 'less', least: 0, most: 1000, words: 'clear road back along the drawing' },
  clearAfterM: { worse: 'less', least: 0, most: 1000, words: 'clear road on along the drawing' },
  sightBeforeM: { worse: 'less', least: 0, most: 2000, words: 'sight back along the drawing' },
  sightAfterM: { worse: 'less', least: 0, most: 2000, words: 'sight on along the drawing' },
} as const satisfies Record<string, Quantity>;

interface Quantity {
  readonly worse: 'more' | 'less';
  readonly least: number;
  readonly most: number;
  readonly words: string;
}

export type QuantityName = keyof typeof quantities;
export const quantityNames = Object.keys(quantities) as QuantityName[];

export const readingTools = ['inclinometer', 'phone', 'hand level', 'tape', 'wheel', 'laser', 'eye', 'other'] as const;

/**
 * One reading of one quantity, in the unit that the quantity's name ends with. Quantity and value are one value: a number
 * that lost what it measures is worse than none.
 */
export const measurement = v.strictObject({
  id,
  siteId: id,
  reading: v.pipe(
    v.strictObject({ quantity: v.picklist(quantityNames), value: number(0, 2000) }),
    v.check(
      ({ quantity, value }) => value >= quantities[quantity].least && value <= quantities[quantity].most,
      (issue) => `expected a value within the bounds of ${issue.input.quantity}`,
    ),
  ),
  /** One sigma in the reading's unit, null where nobody said. */
  sigma: numberOrNone(0, 500),
  /** Stretch of the descent that was read, horizontal metres from the edge; null where it was not told. */
  stretchM: v.optional(
    v.nullable(
      v.pipe(
        v.strictObject({ from: number(0, 1000), to: number(0, 1000) }),
        v.check(({ from, to }) => from <= to, 'expected a stretch that ends past its beginning'),
      ),
    ),
    null,
  ),
  /** Place of the site when it was read; null where nobody noted it. What was read elsewhere betters nothing. */
  at: positionOrNone,
  tool: v.optional(v.picklist(readingTools), 'other'),
  by: line,
  on: day,
  notes,
  deleted,
});

export type MeasurementRecord = v.InferOutput<typeof measurement>;
