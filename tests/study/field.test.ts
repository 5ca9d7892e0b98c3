import { describe, expect, it } from 'vitest';
import {
  type CorrectionRecord,
  type MeasurementRecord,
  type QuantityName,
  quantities,
  quantityNames,
  restoreBook,
} from '../../src/book/index.ts';
import { fieldOfBook, runStudy, type Study, type StudyInputs } from '../../src/study/index.ts';
import { seededRandom } from '../../src/units/index.ts';
import { oneOfEach } from '../helpers/full-book.ts';
import { hillside, studyInputs } from '../helpers/hillside.ts';
import { groundFrom } from '../helpers/plane-ground.ts';

const slope = { belowDeg: 33, lengthM: 40, aboveDeg: 20 };
const inputs = studyInputs(hillside(slope));
const stretch = { from: 4, to: 9 };

const reading = (quantity: QuantityName, value: number, more: Partial<MeasurementRecord> = {}): MeasurementRecord => ({
  ...oneOfEach.measurements,
  id: `m-${quantity}-${value}`,
  siteId: 's1',
  reading: { quantity, value },
  sigma: null,
  tool: quantity.endsWith('Deg') ? 'inclinometer' : 'tape',
  by: 'A. Vale',
  on: '2026-05-01',
  stretchM: null,
  at: inputs.at,
  ...more,
});
const correction = (
  quantity: QuantityName,
  computed: number | null,
  of: readonly MeasurementRecord[],
): CorrectionRecord => ({
  ...oneOfEach.corrections,
  siteId: 's1',
  quantity,
  computed,
  measurementIds: of.map(({ id }) => id),
});

function study(
  measurements: readonly MeasurementRecord[] | null,
  corrections: readonly CorrectionRecord[] = [],
  from: StudyInputs = inputs,
): Study {
  const field = measurements && { measurements, corrections, check: null, inFieldOn: '2026-05-02', contested: [] };
  const found = runStudy({ ...from, field });
  if (!found.ok) throw found.error;
  return found.value;
}

const plain = study(null);
const order = ['low', 'steep', 'high'];
const straight = ({ layouts }: Study) => layouts.find(({ kind }) => kind === 'straight');
const turned = ({ layouts }: Study) => layouts.find(({ kind }) => kind === 'turned');

/** The road of `hillside`; below it the slope turns from south to east 15 m out. */
function bentHillside() {
  const tan = Math.tan((33 * Math.PI) / 180);
  const { layers } = hillside(slope);
  const ground = groundFrom((x, y) => {
    const outM = -y - 4;
    if (outM < 0) return y > 4 ? 1000 + (y - 4) * 0.36 : 1000;
    const turned = Math.min(1, Math.max(0, (outM - 15) / 10));
    return 1000 - (Math.min(outM, 20) + turned * x) * tan;
  }, 801);
  return { ...ground, layers: ground.layers.map((layer) => ({ ...layer, info: layers[0]!.info })) };
}

/** What a study found that must not become better by one reading alone; more is worse. */
function badness(one: Study): Record<string, number> {
  return {
    plan: order.indexOf(one.angle!.planAs),
    governing: one.angle!.governingDeg,
    most: one.angle!.rangeDeg[1],
    nearby: one.angle!.nearbyMaxDeg,
    lip: one.edge!.lipAngleDeg,
    drop: one.descent!.dropM,
    ground: one.descent!.groundLengthM,
    rope: one.descent!.ropeLineM,
    steps: one.descent!.steps.length,
    edge: -Math.abs(one.edge!.offsetM),
    width: -one.bench!.widthM!,
    grade: Math.abs(one.bench!.gradeDeg),
    crossfall: Math.abs(one.bench!.crossfallDeg),
    above: one.above!.angleDeg,
    usableLeft: one.bench!.usableLeftOffsetM!,
    usableRight: -one.bench!.usableRightOffsetM!,
    sightBefore: -(one.closure?.sightM.before ?? 0),
    sightAfter: -(one.closure?.sightM.after ?? 0),
    straightRoom: -(straight(one)?.haulFieldM ?? 0),
    straight: straight(one) ? 0 : 1,
    turned: turned(one) ? 0 : 1,
  };
}
const noBetter = (after: Study, before: Study, of: string): void => {
  const was = badness(before);
  for (const [name, value] of Object.entries(badness(after)))
    expect(value, `${name} after ${of}`).toBeGreaterThanOrEqual(was[name]! - 0.02);
};

describe('a reading that makes the result worse', () => {
  it('changes class, plan, sentence and tensions at once, and says where it comes from', () => {
    const after = study([reading('angleDeg', 47)]);
    expect(plain.angle!.planAs).toBe('steep');
    expect(after.angle).toMatchObject({ governingDeg: 47, planAs: 'high', class: 'high' });
    expect(after.sentence).toContain('Technical rope team needed.');
    expect(after.sentence).toContain('Plan as high: 47° measured, 45 to 49');
    expect(after.origins['angle.governingDeg']).toMatchObject({
      how: 'measured',
      sigma: 1,
      rule: expect.stringContaining('inclinometer, A. Vale, 2026-05-01; computed 33') as string,
      reading: { quantity: 'angleDeg', measured: 47, used: 'measured', betters: false, beyond: true },
    });
    expect(after.field[0]!.computed).toBeCloseTo(plain.angle!.governingDeg, 3);
    expect(after.warnings.find(({ code }) => code === 'reading-counts')).toMatchObject({ severity: 'check' });
    const tension = straight(after)!.tensionKn;
    expect(tension.belay).toBeGreaterThan(straight(plain)!.tensionKn.belay);
    expect(tension.hanging).toBeGreaterThan(straight(plain)!.tensionKn.hanging);
  });

  it('never leaves the whole of a bent fall line gentler than its measured part', () => {
    const bent = studyInputs(bentHillside());
    const before = study(null, [], bent);
    expect(before.descent!.whole).not.toBeNull();
    const whole = study([reading('angleDeg', 60), reading('dropM', 70)], [], bent).descent!.whole!;
    expect(whole.planAs).toBe('high');
    expect(whole.governingDeg).toBeGreaterThanOrEqual(60);
    expect(whole.dropM).toBeGreaterThan(before.descent!.whole!.dropM);
  });

  it('near a limit is planned on the steeper side by its own uncertainty', () => {
    expect(study([reading('angleDeg', 43)]).angle!.planAs).toBe('steep');
    expect(study([reading('angleDeg', 44.5)]).angle!.planAs).toBe('high');
    expect(study([reading('angleDeg', 43, { tool: 'eye' })]).angle!.planAs).toBe('high');
  });

  it('of a nearer edge moves edge, usable road and descent, and shortens the straight haul', () => {
    const after = study([reading('edgeOffsetM', 3)]);
    expect(Math.abs(after.edge!.offsetM - after.bench!.lineShiftM)).toBeCloseTo(3, 1);
    expect(after.bench!.usableRightOffsetM!).toBeLessThanOrEqual(2.02);
    expect(after.origins['edge.offsetM']!.how).toBe('measured');
    expect(after.descent!.ropeLineM).toBeGreaterThan(plain.descent!.ropeLineM + 0.5);
    expect(straight(after)?.haulFieldM ?? 0).toBeLessThan(straight(plain)!.haulFieldM);
  });

  it('of a step plans as high; one too low to be a step does not', () => {
    const after = study([reading('stepHeightM', 2.5, { stretchM: { from: 12, to: 13 } })]);
    expect(after.descent!.steps).toEqual([{ distanceM: 12, heightM: 2.5, source: 'measured' }]);
    expect(after.angle!.planAs).toBe('high');
    expect(after.warnings.find(({ code }) => code === 'vertical-step')!.severity).toBe('stop');
    expect(study([reading('stepHeightM', 1)]).angle!.planAs).toBe('steep');
  });

  it('of a drop lengthens ground and rope at least to the straight line, and steepens to the mean', () => {
    const after = study([reading('dropM', 60)]);
    expect(after.descent!.dropM).toBe(60);
    expect(after.descent!.groundLengthM).toBeGreaterThanOrEqual(Math.hypot(after.descent!.horizontalM, 60) - 0.01);
    expect(after.angle!.governingDeg).toBeGreaterThanOrEqual(after.angle!.meanDeg);
    expect(after.angle!.planAs).toBe('high');
  });

  it('of the tape to the anchor holds straight hauls to it; a longer tape changes none', () => {
    const has = straight(plain)!.haulFieldM;
    const shorter = study([reading('edgeToAnchorM', has - 1)]);
    expect(straight(shorter)!.haulFieldM).toBeCloseTo(has - 1, 3);
    expect(straight(shorter)!.resets).toBeGreaterThanOrEqual(straight(plain)!.resets);
    expect(shorter.field[0]).toMatchObject({ computed: has, used: 'measured' });
    const longer = study([reading('edgeToAnchorM', has + 5)]);
    expect(longer.layouts).toEqual(plain.layouts);
    expect(longer.field[0]).toMatchObject({ used: 'computed', why: 'one reading, and it betters the result' });
  });

  it('of clear road keeps every anchor within it', () => {
    const blocked = study([reading('clearBeforeM', 2), reading('clearAfterM', 2)]);
    expect(turned(plain)).toBeDefined();
    expect(turned(blocked)).toBeUndefined();
    expect(blocked.field.map(({ computed, used }) => [computed, used])).toEqual([
      [null, 'measured'],
      [null, 'measured'],
    ]);
  });
});

describe('a reading that betters the result', () => {
  const bump = study([]);
  const computed = bump.angle!.governingDeg;
  const [from, to] = bump.angle!.stretchM;
  const here = { stretchM: { from: Math.max(0, from), to } };
  const two = [reading('angleDeg', 26, here), reading('angleDeg', 27, { ...here, by: 'B. Marsh' })];

  it('alone changes nothing but what is said of it', () => {
    const after = study([two[0]!]);
    const { field, warnings, ...rest } = after;
    const { field: _none, warnings: before, ...same } = bump;
    expect(rest).toEqual(same);
    expect(field).toMatchObject([{ measured: 26, used: 'computed', why: 'one reading, and it betters the result' }]);
    expect(warnings.length).toBe(before.length + 1);
    expect(warnings.find(({ code }) => code === 'reading-not-taken')!.text).toMatch(
      /^Measured 26°, .*, by A\. Vale, 2026-05-01, computed 3\d.*°; not taken over: one reading, and it betters the result\. They lie farther apart/u,
    );
  });

  it('counts with two by different people, a name and a reason, and stays marked; steeper ground elsewhere governs then', () => {
    const after = study(two, [correction('angleDeg', computed, two)]);
    expect(after.field[0]).toMatchObject({ used: 'measured', betters: true, why: null });
    expect(after.origins['angle.governingDeg']!.rule).toContain('gentler than computed');
    expect(after.warnings.find(({ code }) => code === 'reading-gentler')!.severity).toBe('check');
    // The hillside is one plane: what was not read is as steep as before.
    expect(after.angle!.governingDeg).toBeGreaterThan(27);
    expect(after.angle!.governingDeg).toBeLessThanOrEqual(computed);
  });

  it('on a short slope, all of it read, is planned on', () => {
    const short = studyInputs(hillside({ belowDeg: 33, lengthM: 6, aboveDeg: 20 }));
    const before = study([], [], short);
    const [a, b] = before.angle!.stretchM;
    const on = { stretchM: { from: Math.max(0, a), to: b } };
    const pair = [reading('angleDeg', 22, on), reading('angleDeg', 23, { ...on, on: '2026-05-03' })];
    const after = study(pair, [correction('angleDeg', before.angle!.governingDeg, pair)], short);
    expect(before.angle!.planAs).toBe('steep');
    expect(after.angle!).toMatchObject({ governingDeg: 23, planAs: 'low' });
    const corners = [-1, 1, 1, -1, -1].map((x, k) => [-128 + x / 1000, 44 + (k < 2 || k === 4 ? -1 : 1) / 1000]);
    const area = { type: 'Polygon' as const, coordinates: [corners as [number, number][]] };
    const slide = { ...oneOfEach.events, area, on: '2026-05-02', deleted: false };
    // Only one of the two was read after the ground changed.
    const since = study(pair, [correction('angleDeg', before.angle!.governingDeg, pair)], {
      ...short,
      events: [slide],
    });
    expect(since.field[0]).toMatchObject({ used: 'computed', betters: false });
    const same = pair.map((one) => ({ ...one, on: '2026-05-03' }));
    expect(study(same, [correction('angleDeg', before.angle!.governingDeg, same)], short).angle).toEqual(before.angle);
  });
});

it('over many single readings of every quantity nothing ever gets better, and a worse one always counts', () => {
  const random = seededRandom(11);
  const computed = new Map<QuantityName, number | null>();
  let worseCount = 0;
  for (let n = 0; n < 60; n++) {
    const quantity = quantityNames[n % quantityNames.length]!;
    const { worse, most } = quantities[quantity];
    const value = Math.round(random.next() * Math.min(most, 100) * 10) / 10;
    const after = study([reading(quantity, value, { stretchM: random.next() < 0.5 ? stretch : null })]);
    noBetter(after, plain, `${quantity} ${value}`);
    const row = after.field[0]!;
    const isWorse = row.computed !== null && (worse === 'more' ? value >= row.computed : value <= row.computed);
    if (isWorse) worseCount++;
    if (isWorse) expect(row.used, quantity).toBe('measured');
    else if (row.computed !== null) expect(row.used, quantity).toBe('computed');
    computed.set(quantity, row.computed);
  }
  expect(worseCount).toBeGreaterThan(15);
}, 60_000);

it('in worse conditions a single reading betters nothing either, nor do worse conditions better what was read', () => {
  const random = seededRandom(23);
  const names = ['wet', 'ice', 'night', 'wind', 'looseGround'] as const;
  let laidOut = 0;
  for (let n = 0; n < 12; n++) {
    const added = names.filter((name) => random.next() < (name === 'ice' ? 0.15 : 0.4));
    const foul: StudyInputs = {
      ...inputs,
      conditions: { ...inputs.conditions, ...Object.fromEntries(added.map((name) => [name, true])) },
    };
    const quantity = quantityNames[n % quantityNames.length]!;
    const value = Math.round(random.next() * Math.min(quantities[quantity].most, 60) * 10) / 10;
    const read = [reading(quantity, value, { stretchM: random.next() < 0.5 ? stretch : null })];
    const what = `${quantity} ${value}, ${added.join(' ') || 'fair'}`;
    const [fairRead, foulPlain, foulRead] = [study(read), study(null, [], foul), study(read, [], foul)];
    noBetter(foulRead, foulPlain, what);
    noBetter(foulRead, fairRead, what);
    for (const before of [foulPlain, fairRead]) {
      const [first, was] = [foulRead.layouts[0], before.layouts[0]];
      if (first === undefined) continue;
      expect(was, what).toBeDefined();
      laidOut++;
      for (const name of ['hanging', 'held', 'belay'] as const)
        if (first.id === was!.id)
          expect(first.tensionKn[name], `${name} after ${what}`).toBeGreaterThanOrEqual(was!.tensionKn[name] - 1e-6);
    }
  }
  expect(laidOut).toBeGreaterThan(8);
}, 120_000);

it('a steeper reading never plans gentler nor lessens a tension, whatever its tool', () => {
  for (const tool of ['inclinometer', 'eye'] as const) {
    let last = plain;
    for (let deg = 20; deg <= 88; deg += 6) {
      const next = study([reading('angleDeg', deg, { tool })]);
      noBetter(next, last, `${deg}° by ${tool}`);
      const a = straight(last);
      const b = straight(next);
      if (a && b)
        for (const name of ['hanging', 'held', 'belay'] as const)
          expect(b.tensionKn[name], `${name} at ${deg}°`).toBeGreaterThanOrEqual(a.tensionKn[name] - 1e-6);
      last = next;
    }
  }
}, 60_000);

it('refuses a reading that no instrument can show, in one sentence', () => {
  for (const value of [120, -3, Number.NaN]) {
    const field = {
      ...{ measurements: [reading('angleDeg', value)], corrections: [], check: null, inFieldOn: null, contested: [] },
    };
    const found = runStudy({ ...inputs, field });
    expect(found.ok).toBe(false);
    if (!found.ok)
      expect(found.error.message).toMatch(/^The reading .* is no number from 0 to 90; correct or delete it\.$/u);
  }
});

describe('a book’s field', () => {
  const book = (tables: object, contested: unknown[] = []) =>
    restoreBook(
      {
        schema: 'brinkbook/book@1',
        tables: { sites: [{ id: 's1', name: 'Bend', place: { lon: -128, lat: 44, sideAzimuthDeg: 180 } }], ...tables },
        contested,
      },
      'The book',
    );
  const by = (from: ReturnType<typeof book>, today: string): Study => {
    const found = runStudy({ ...inputs, field: fieldOfBook(from, 's1', today), events: from.tables.events });
    if (!found.ok) throw found.error;
    return found.value;
  };
  const signOff = { id: 'o1', siteId: 's1', by: 'R. Vale', role: 'captain', on: '2026-05-01', method: 'walked' };

  it('signs the study; a review that is due and a desk check are said', () => {
    const signed = by(book({ signOffs: [signOff] }), '2026-06-01');
    expect(signed.check).toMatchObject({ by: 'R. Vale', role: 'captain', on: '2026-05-01', due: false });
    expect(signed.check!.dueOn).toBe('2027-05-01');
    expect(signed.warnings.map(({ code }) => code)).not.toContain('not-field-verified');
    expect(by(book({ signOffs: [signOff] }), '2027-05-01').warnings.map(({ code }) => code)).toContain('review-due');
    const desk = by(book({ signOffs: [{ ...signOff, method: 'desk' }] }), '2026-06-01');
    expect(desk.warnings.find(({ code }) => code === 'not-field-verified')!.text).toContain('at a desk by R. Vale');
    expect(by(book({}), '2026-06-01').check).toBeNull();
    expect(fieldOfBook(book({}), null, '2026-06-01')).toBeNull();
  });

  it('takes the worse of two values that nobody decided between, and says so', () => {
    const measurement = reading('angleDeg', 36);
    const values = [36, 47].map((value) => ({
      value: { quantity: 'angleDeg', value },
      who: `Person ${value}`,
      device: 'd',
      atMs: 0,
    }));
    const both = by(
      book({ measurements: [measurement] }, [{ table: 'measurements', id: measurement.id, field: 'reading', values }]),
      '2026-06-01',
    );
    expect(both.angle!.governingDeg).toBe(47);
    expect(both.warnings.find(({ code }) => code === 'contested')!.text).toBe(
      'Two values stand in the book for a reading (angle of the slope over 5 m: 36 or 47°), by Person 36 and Person 47; the worse is used until somebody decides.',
    );
  });
});

describe('a reading taken elsewhere', () => {
  const east = (m: number) => ({ ...inputs.at, lon: inputs.at.lon + m / 80_000 });
  const taken = (value: number, at: MeasurementRecord['at']) =>
    ['2026-05-01', '2026-05-03'].map((on, i) =>
      reading('angleDeg', value, { id: `e${i}`, on, at, stretchM: governing }),
    );
  const governing = { from: plain.angle!.stretchM[0], to: plain.angle!.stretchM[1] };
  const gentler = plain.angle!.governingDeg - 4;
  const withWord = (readings: readonly MeasurementRecord[], moved: StudyInputs = inputs): Study =>
    study(readings, [correction('angleDeg', plain.angle!.governingDeg, readings)], moved);

  it('betters nothing once the site is moved, nor where nobody noted the place; here it does', () => {
    expect(withWord(taken(gentler, inputs.at)).field[0]).toMatchObject({ used: 'measured', betters: true });
    expect(withWord(taken(gentler, east(3))).field[0]).toMatchObject({ betters: true, elsewhere: false });
    const moved = withWord(taken(gentler, east(12)));
    expect(moved.field[0]).toMatchObject({ used: 'computed', betters: false, elsewhere: true });
    expect(moved.field[0]!.awayM).toBeCloseTo(12, 0);
    expect(moved.angle!.governingDeg).toBe(plain.angle!.governingDeg);
    expect(moved.field[0]!.why).toMatch(/not enough readings were taken at this very place/);
    const unknown = withWord(taken(gentler, null));
    expect(unknown.field[0]).toMatchObject({ used: 'computed', awayM: null, elsewhere: true });
    expect(unknown.field[0]!.why).toMatch(/nobody noted where/);
  });

  it('that is worse stays, and where it was taken is said', () => {
    const worse = (at: MeasurementRecord['at']) => study([reading('angleDeg', 44, { at, stretchM: governing })]);
    for (const at of [inputs.at, east(12), null]) expect(worse(at).angle!.governingDeg).toBeGreaterThanOrEqual(44);
    const said = (at: MeasurementRecord['at']) => worse(at).warnings.find(({ code }) => code === 'reading-counts')!;
    expect(said(inputs.at).text).not.toMatch(/taken/);
    expect(said(east(12))).toMatchObject({ severity: 'check' });
    expect(said(east(12)).text).toMatch(/It was taken \d+ ft from here: take it again\./);
    expect(said(null).text).toMatch(/Where it was taken was not noted\./);
  });
});
