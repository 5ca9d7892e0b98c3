import type { PlanSheet } from '../../src/plan/index.ts';
import type { Study } from '../../src/study/index.ts';
import { studyWithLayouts } from './study-with-layouts.ts';

/** A site's plan sheet around the study with layouts; every part can be changed. */
export function planSheetOf(change: Partial<PlanSheet> = {}, study: Partial<Study> = {}): PlanSheet {
  return {
    study: studyWithLayouts(study),
    site: { id: 'north-shelf', name: 'North Shelf', notes: '', radio: 'Command 2' },
    cardLines: [],
    district: 'Invented District',
    mile: '3.43',
    alongM: 420,
    check: null,
    overdueSince: null,
    stops: [],
    places: [],
    roads: [{ name: 'Shelf Road', line: [-128.01, 44.00005, -127.99, 44.00005] }],
    photos: [],
    address: null,
    ...change,
  };
}
