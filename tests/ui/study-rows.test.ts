import { expect, test } from 'vitest';
import { studyRows } from '../../src/ui/notes/study-rows.ts';
import { studyFixture } from '../helpers/study-fixture.ts';

const origins = {
  'angle.governingDeg': { how: 'computed', sigma: 0.9, rule: 'steepest 5 m window' },
  'bench.widthM': { how: 'assumed', sigma: null, rule: 'tagged width' },
} as const;
const row = (label: string, units: 'us' | 'metric' = 'us') =>
  studyRows(studyFixture({ origins }), units).find((one) => one.label === label);

test('a number stands with its range, rounded outward, and its origin', () => {
  expect(row('Governing angle')).toMatchObject({ value: '33°', how: 'computed', rule: 'steepest 5 m window' });
  expect(row('Governing angle')!.more).toContain('31 to 36');
  // 4.9 m ± 1.645 · 0.2 m is 14.996 to 17.155 ft.
  expect(row('Edge from road line')).toMatchObject({ value: '16 ft', more: '14 to 18 ft (5 to 95 %)' });
  expect(row('Edge from road line', 'metric')).toMatchObject({ value: '4.9 m', more: '4.5 to 5.3 m (5 to 95 %)' });
});

test('what a rope needs is rounded up, what can be seen down', () => {
  // 50.9 m is 166.99 ft; 26 m is 85.3 ft.
  expect(row('Rope line')!.value).toBe('167 ft');
  expect(row('Load in sight')!.value).toBe('to 85 ft');
});

test('a study without an edge has no numbers of a descent', () => {
  const none = studyFixture({ edge: null, descent: null, angle: null, profile: null, above: null });
  expect(studyRows(none, 'us')).toEqual([]);
});
