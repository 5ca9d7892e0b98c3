import { describe, expect, it } from 'vitest';
import {
  type CorrectionRecord,
  fieldValue,
  type MeasurementRecord,
  type QuantityName,
  quantities,
  quantityNames,
} from '../../../src/book/index.ts';
import { seededRandom } from '../../../src/units/index.ts';
import { oneOfEach } from '../../helpers/full-book.ts';

const reading = (id: string, value: number, more: Partial<MeasurementRecord> = {}): MeasurementRecord => ({
  ...oneOfEach.measurements,
  id,
  reading: { quantity: 'angleDeg', value },
  stretchM: { from: 4, to: 9 },
  ...more,
});
const correction = (more: Partial<CorrectionRecord> = {}): CorrectionRecord => ({
  ...oneOfEach.corrections,
  measurementIds: ['a', 'b'],
  computed: 38,
  ...more,
});
const computed = { value: 38, stretchM: [4, 9] as const };
const angle = (readings: MeasurementRecord[], corrections: CorrectionRecord[] = [], notBefore: string | null = null) =>
  fieldValue('angleDeg', computed, readings, corrections, notBefore);

describe('a reading that makes the result worse', () => {
  it('counts at once, the worst first', () => {
    expect(angle([reading('a', 41), reading('b', 43, { by: 'Officer B', sigma: null })])).toMatchObject({
      value: 43,
      how: 'measured',
      betters: false,
      readings: ['b'],
      by: 'Officer B',
      sigma: null,
    });
  });
  it('counts wherever and whenever it was taken, whatever others say', () => {
    const two = [reading('a', 33), reading('b', 34)];
    const elsewhere = reading('c', 39, { stretchM: null, on: '2001-01-01' });
    expect(angle([...two, elsewhere], [correction()], '2024-01-01').value).toBe(39);
  });
  it('of a width is a smaller one', () => {
    const narrow = reading('a', 6, { reading: { quantity: 'benchWidthM', value: 6 } });
    expect(fieldValue('benchWidthM', { value: 7, stretchM: null }, [narrow], [])).toMatchObject({
      value: 6,
      how: 'measured',
    });
  });
  it('equal to what was computed makes it measured', () => {
    expect(angle([reading('a', 38)])).toMatchObject({ value: 38, how: 'measured', betters: false });
  });
});

describe('a reading that betters the result', () => {
  const two = [reading('a', 33), reading('b', 34, { by: 'Officer B' })];
  it('waits for a second one, a name and a reason', () => {
    expect(angle([reading('a', 33)])).toMatchObject({
      value: 38,
      how: 'computed',
      waiting: { best: 33, readings: 1, lacks: ['second reading', 'name and reason'] },
    });
    expect(angle(two).waiting?.lacks).toEqual(['name and reason']);
  });
  it('counts with them, the worse of the two, and is marked', () => {
    expect(angle(two, [correction()])).toMatchObject({
      value: 34,
      how: 'measured',
      betters: true,
      by: 'Officer A',
      reason: 'The raster holds a fallen tree.',
      waiting: null,
    });
  });
  it.each<[string, MeasurementRecord[], CorrectionRecord[], string | null, string]>([
    [
      'on another stretch',
      [reading('a', 33), reading('b', 34, { by: 'Officer B', stretchM: { from: 20, to: 25 } })],
      [correction()],
      null,
      'second reading',
    ],
    [
      'over a longer stretch',
      [reading('a', 33), reading('b', 34, { by: 'Officer B', stretchM: { from: 0, to: 60 } })],
      [correction()],
      null,
      'second reading',
    ],
    [
      'on a stretch that nobody told',
      [reading('a', 33), reading('b', 34, { by: 'Officer B', stretchM: null })],
      [correction()],
      null,
      'second reading',
    ],
    [
      'by one person on one day, however the name is written',
      [reading('a', 33), reading('b', 34, { by: ' officer  a ' })],
      [correction()],
      null,
      'second reading',
    ],
    ['from before an event', two, [correction()], '2025-03-19', 'second reading'],
    [
      'taken back',
      [reading('a', 33), reading('b', 34, { by: 'Officer B', deleted: true })],
      [correction()],
      null,
      'second reading',
    ],
    ['not named by the correction', two, [correction({ measurementIds: ['a'] })], null, 'second reading'],
    ['without a reason', two, [correction({ reason: ' ' })], null, 'name and reason'],
    ['with a correction taken back', two, [correction({ deleted: true })], null, 'name and reason'],
    ['with a correction of another quantity', two, [correction({ quantity: 'dropM' })], null, 'name and reason'],
    ['after the computation moved', two, [correction({ computed: 36 })], null, 'computed anew'],
  ])('does not count %s', (_, readings, corrections, notBefore, lack) => {
    const found = angle(readings, corrections, notBefore);
    expect([found.value, found.how]).toEqual([38, 'computed']);
    expect(found.waiting?.lacks).toContain(lack);
  });
  it('counts from one person on two days', () => {
    expect(angle([reading('a', 33), reading('b', 34, { on: '2025-03-20' })], [correction()]).value).toBe(34);
  });
  it('takes the worst of all readings although two are better', () => {
    expect(angle([...two, reading('c', 36, { stretchM: null })], [correction()]).value).toBe(36);
  });
  it('of what was not computed is any', () => {
    const nothing = { value: null, stretchM: null };
    expect(fieldValue('angleDeg', nothing, [reading('a', 70)], []).how).toBe('computed');
    expect(fieldValue('angleDeg', nothing, two, [correction({ computed: null })])).toMatchObject({
      value: 34,
      betters: true,
    });
  });
});

it('over 5,000 random sets, nothing but two readings, a name and a reason betters any quantity', () => {
  const random = seededRandom(7);
  let bettered = 0;
  const draw = (name: QuantityName): number => Math.round(random.next() * quantities[name].most);
  for (let i = 0; i < 5000; i++) {
    const quantity = quantityNames[i % quantityNames.length]!;
    const value = draw(quantity);
    const readings = Array.from({ length: Math.floor(random.next() * 4) }, (_, k) =>
      reading(`r${k}`, 0, {
        reading: { quantity, value: draw(quantity) },
        stretchM: random.next() < 0.5 ? null : { from: 4, to: 9 },
        by: random.next() < 0.5 ? 'Officer A' : 'Officer B',
      }),
    );
    const corrections =
      random.next() < 0.5 ? [correction({ quantity, computed: value, measurementIds: ['r0', 'r1'] })] : [];
    const found = fieldValue(quantity, { value, stretchM: [4, 9] }, readings, corrections);
    const worse = quantities[quantity].worse === 'more' ? 1 : -1;
    for (const one of readings) {
      if (worse * (one.reading.value - value) > 0)
        expect(worse * (found.value! - one.reading.value)).toBeGreaterThanOrEqual(0);
    }
    if (worse * (found.value! - value) < 0) {
      bettered += 1;
      expect([found.betters, corrections.length, readings.length >= 2]).toEqual([true, 1, true]);
      expect(new Set(readings.map(({ by }) => by)).size).toBe(2);
    }
  }
  expect(bettered).toBeGreaterThan(20);
});
