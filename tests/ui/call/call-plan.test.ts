import { describe, expect, it } from 'vitest';
import type { Study } from '../../../src/study/index.ts';
import { type CallPlan, callPlan, holdOf } from '../../../src/ui/call/plan/index.ts';
import { studyFixture } from '../../helpers/study-fixture.ts';
import { studyWithLayouts } from '../../helpers/study-with-layouts.ts';

const line = (plan: CallPlan, label: string): string => {
  const row = plan.rows.find((one) => one.label === label);
  return [row?.text, row?.strong, row?.more].filter(Boolean).join(' | ');
};
const everything = ({ rows, next, stops, hold }: CallPlan): string =>
  [...rows.flatMap(({ text, strong, more }) => [text, strong, more]), next?.text, next?.more, ...stops, hold.text].join(
    ' | ',
  );

describe('a study in the words of the call screen', () => {
  it('tells the angle with its range rounded outward, and where the data come from', () => {
    const plan = callPlan(studyWithLayouts(), 'us');
    expect([plan.planAs, plan.angle, plan.range]).toEqual(['steep', '33°', '31 to 36']);
    // RMSE 0.05 m is 1.97 inches, rounded up; nobody checked the fixture.
    expect(plan.data).toBe('elevation-1m.tif, 3.3 ft cells, RMSE 2 in, 2023-06-01; not field-verified.');
  });

  it('says of an angle that it was measured', () => {
    const study = studyWithLayouts();
    const origins = {
      ...study.origins,
      'angle.governingDeg': { how: 'measured' as const, sigma: null, rule: 'taken' },
    };
    expect([callPlan(study, 'us').measured, callPlan({ ...study, origins }, 'us').measured]).toEqual([false, true]);
  });

  it('leads with the haul that ranks first and tells the other', () => {
    const study = studyWithLayouts();
    const plan = callPlan(study, 'us');
    const labels = plan.rows.map(({ label }) => label);
    const [first] = study.layouts;
    expect(labels.indexOf(first!.kind === 'turned' ? 'Turned' : 'Straight')).toBeLessThan(
      labels.indexOf(first!.kind === 'turned' ? 'Straight' : 'Turned'),
    );
    expect(line(plan, 'People')).toMatch(/^4 at once, 8 lower 8 min, 13 raise 12 min/);
    expect(line(plan, 'People')).toContain('road in 47 to 71 min');
  });

  it('planned as high it tells no haul, no people, no minutes, whatever the study holds', () => {
    const study = studyWithLayouts();
    const high: Study = { ...study, angle: { ...study.angle!, planAs: 'high', class: 'high' } };
    const plan = callPlan(high, 'us');
    expect(plan.rows.map(({ label }) => label)).toEqual(['Rope']);
    expect(everything(plan)).not.toMatch(/ min\b|reset|raise|pull/);
    expect(plan.hold).toEqual({ text: 'team only', met: false });
  });

  it('without a layout it says why, once, and that nothing anchors', () => {
    const text = 'No apparatus finds a spot here.';
    const warnings = [{ code: 'no-haul', text, severity: 'note' as const }];
    const plan = callPlan(studyFixture({ warnings }), 'us');
    expect(plan.rows.filter(({ label }) => label === 'Haul').map((row) => row.text)).toEqual([text]);
    expect(plan.hold).toEqual({ text: 'no anchor', met: false });
  });

  it('where no edge was found the sentence is all there is', () => {
    const sentence = 'No drop edge on the uphill side.';
    const none = { edge: null, descent: null, profile: null, angle: null, sentence };
    const plan = callPlan(studyFixture(none), 'us');
    expect(plan.rows.map((row) => row.text)).toEqual([sentence]);
    expect([plan.planAs, plan.angle]).toEqual([null, null]);
  });

  it('a stop is told before everything', () => {
    const warnings = [{ code: 'vertical-step', text: 'Vertical step of about 8 ft.', severity: 'stop' as const }];
    expect(callPlan(studyWithLayouts({ warnings }), 'us').stops).toEqual(['Vertical step of about 8 ft.']);
  });

  it('what the book knows of the site heads the plan: what changed, and that somebody was there', () => {
    const site = { stops: ['Slide, 2026-02-01: nobody has been here since.'], checkedOn: '2025-10-03' };
    const plan = callPlan(studyWithLayouts(), 'us', site);
    expect(plan.stops[0]).toBe('Slide, 2026-02-01: nobody has been here since.');
    expect(plan.data).toMatch(/; checked in the field 2025-10-03\.$/);
  });

  it('a rope that is short is told with who brings it', () => {
    const study = studyWithLayouts();
    const [first, ...rest] = study.layouts;
    const fits = {
      firstArriving: 'no' as const,
      firstAlarm: 'no' as const,
      mutualAid: 'yes' as const,
      short: [{ line: 'main' as const, byM: 6.1, unit: 'Engine 7', atMin: 26 }],
    };
    const plan = callPlan({ ...study, layouts: [{ ...first!, fits }, ...rest] }, 'us');
    // 6.1 m are 20.01 ft: what is short is rounded up.
    expect(line(plan, 'Rope')).toContain('main 21 ft short | Engine 7, 26 min');
  });
});

describe('how the anchors hold', () => {
  const withHold = (factor: number, required: number, ok: 'yes' | 'no'): Study => {
    const study = studyWithLayouts();
    const [first, ...rest] = study.layouts;
    const hold = first!.forces.find(({ kind }) => kind === 'hold')!;
    return { ...study, layouts: [{ ...first!, forces: [{ ...hold, factor, required, ok }] }, ...rest] };
  };
  it('is never rounded up: 2.99 of 3 is 2.9, not met', () => {
    expect(holdOf(withHold(2.99, 3, 'no'))).toEqual({ text: '2.9 not met', met: false });
  });
  it('tells the factor and what is needed where it is met', () => {
    expect(holdOf(withHold(4.27, 3, 'yes'))).toEqual({ text: 'hold 4.2/3', met: true });
  });
  it('nothing held is no anchor', () => {
    expect(holdOf(withHold(0, 3, 'no'))).toEqual({ text: 'no anchor', met: false });
  });
});
