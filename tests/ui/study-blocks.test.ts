import { describe, expect, test } from 'vitest';
import type { CorrectionRecord, MeasurementRecord, QuantityName } from '../../src/book/index.ts';
import type { StudyArrival } from '../../src/study/index.ts';
import { peopleSteps } from '../../src/ui/study/people-steps.ts';
import { resetShares } from '../../src/ui/study/pull-bar.ts';
import { apartWords, readingValue, usedWords } from '../../src/ui/study/reading-words.ts';
import { takenRows } from '../../src/ui/study/taken-rows.ts';
import { studyFixture } from '../helpers/study-fixture.ts';

const reading = (quantity: QuantityName, value: number, id = 'r1'): MeasurementRecord => ({
  id,
  siteId: 'a',
  reading: { quantity, value },
  sigma: null,
  stretchM: quantity === 'angleDeg' ? { from: 11, to: 16 } : null,
  at: { lon: studyFixture().site.lon, lat: studyFixture().site.lat },
  tool: 'inclinometer',
  by: 'A',
  on: '2024-05-01',
  notes: '',
  deleted: false,
});
const row = (readings: MeasurementRecord[], corrections: CorrectionRecord[] = []) =>
  takenRows(studyFixture(), readings, corrections, []).find(({ quantity }) => quantity === 'angleDeg')!;

describe('readings beside what was computed', () => {
  test('the main quantities are always offered, another one once it was read', () => {
    const rows = takenRows(studyFixture(), [reading('lipAngleDeg', 40)], [], []);
    expect(rows.map(({ quantity }) => quantity)).toEqual(['angleDeg', 'edgeOffsetM', 'dropM', 'lipAngleDeg']);
  });

  test('a steeper angle counts at once; a gentler one waits for a second reading', () => {
    const steeper = row([reading('angleDeg', 46)]);
    expect(usedWords(steeper)).toBe('measured');
    expect(steeper.counts.value).toBe(46);
    expect(apartWords(steeper, 'us')).toBe('+12.6°');
    const gentler = row([reading('angleDeg', 28)]);
    expect(usedWords(gentler)).toBe('computed');
    expect(gentler.counts.waiting?.lacks).toContain('second reading');
  });

  test('beside a study that goes by a reading stands what was computed before', () => {
    const study = studyFixture({
      angle: { ...studyFixture().angle!, governingDeg: 46 },
      field: [
        {
          ...{ quantity: 'angleDeg', computed: 33.4, computedRange: [31.8, 35.1], stretchM: [11, 16], measured: 46 },
          ...{ sigma: 1, used: 'measured', betters: false, tool: 'inclinometer', by: 'A', on: '2024-05-01' },
          ...{ readings: 1, reason: null, beyond: true, why: null, awayM: 0, elsewhere: false },
        },
      ],
    });
    const [angle] = takenRows(study, [reading('angleDeg', 46)], [], []);
    expect(angle).toMatchObject({ computed: 33.4, range: [31.8, 35.1], counts: { value: 46, how: 'measured' } });
    expect(apartWords(angle!, 'us')).toBe('+12.6°');
  });

  test('feet are kept as metres, degrees as they are', () => {
    expect(readingValue(16.4, 'metres', 'us')).toBeCloseTo(4.9987, 4);
    expect(readingValue(16.4, 'metres', 'metric')).toBe(16.4);
    expect(readingValue(33, 'degrees', 'us')).toBe(33);
  });
});

test('the step line adds up who came, units of one minute in one step, dashed from mutual aid on', () => {
  const unit = (
    atMin: number,
    people: number,
    name: string,
    tier: StudyArrival['tier'] = 'first alarm',
  ): StudyArrival => ({
    ...{ atMin, people, unit: name, apparatus: null, tier, kit: [], ropesM: [] },
  });
  const steps = peopleSteps([
    unit(8, 4, 'E2'),
    unit(0, 4, 'E1', 'first arriving'),
    unit(8, 2, 'M1'),
    unit(25, 8, 'X', 'mutual aid'),
  ]);
  expect(steps).toEqual([
    { atMin: 0, there: 4, units: ['E1'], aid: false },
    { atMin: 8, there: 10, units: ['E2', 'M1'], aid: false },
    { atMin: 25, there: 18, units: ['X'], aid: true },
  ]);
});

test('the raise is cut at each reset, one fewer than pulls', () => {
  expect(resetShares({ pulls: 5, resets: 4 })).toEqual([0.2, 0.4, 0.6, 0.8]);
  expect(resetShares({ pulls: 1, resets: 0 })).toEqual([]);
});
