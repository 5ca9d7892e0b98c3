import type { Point } from 'geojson';
import { describe, expect, it } from 'vitest';
import { STOP_LINE, type Study, studySentence } from '../../src/study/index.ts';
import { haulStudy, spot, straightLayout, turnedLayout, way } from '../helpers/haul-study.ts';
import { studyFixture } from '../helpers/study-fixture.ts';

const us = (study: Study): string => studySentence(study, 'us');

describe('the sentence of a study without a haul', () => {
  it('says how to plan, the angle with its range, the rule, the rope and the drop', () => {
    expect(us(studyFixture())).toBe(
      'Plan as steep: 33°, 31 to 36 (rule 30/45). 167 ft of rope line to where the ground levels, drop 77 ft.',
    );
    expect(studySentence(studyFixture(), 'metric')).toContain('51 m of rope line');
  });

  it('says why there is none', () => {
    const warnings = [
      { code: 'no-straight-haul', severity: 'note', text: 'No straight haul: nothing stands behind the edge.' },
      { code: 'no-turned-haul', severity: 'note', text: 'No turned haul: the bench is too narrow.' },
    ] as const;
    expect(us(studyFixture({ warnings: [...warnings] }))).toMatch(
      /No straight haul: nothing stands behind the edge\. No turned haul: the bench is too narrow\.$/,
    );
  });

  it('tells undecided, steps and screening', () => {
    const base = studyFixture();
    const study = studyFixture({
      angle: { ...base.angle!, class: 'undecided' },
      descent: { ...base.descent!, steps: [{ distanceM: 20, heightM: 2.4, source: 'ground' }] },
      terrain: { ...base.terrain, screeningOnly: true, cellM: 10 },
    });
    expect(us(study)).toMatch(
      /^Screening only, 33 ft cells cannot show the road bench: no spots, no layouts\. Plan as steep, undecided: .* Step of about 7\.9 ft at 66 ft\./,
    );
  });

  it('tells of no edge and of a structure in the words of its warning', () => {
    const text = 'No drop edge on the uphill side: the ground rises there.';
    const flat = studyFixture({ edge: null, descent: null, warnings: [{ code: 'no-edge', severity: 'check', text }] });
    expect(us(flat)).toBe(text);
  });
});

describe('the sentence of a study with a haul', () => {
  it('says haul, lanes, who stands where, the other haul, rope, people and minutes, rounded to the cautious side', () => {
    // 20.2 m is 66.3 ft, 52.25 m 171.4 ft, 60 m 196.9 ft, 5 m 16.4 ft.
    expect(us(haulStudy())).toBe(
      'Plan as steep: 33°, 31 to 36 (rule 30/45). ' +
        'Turned haul up the road, 3:1, 66 ft along the outer lane: 2 resets, road closed; Engine 1 at the turn, Engine 2 (8 min) as anchor. ' +
        'Straight haul not practical: 16 ft of room. ' +
        '172 ft of main, 196 there. ' +
        '4 make contact at once, 8 lower at 8 min, 13 raise at 12 min: 5 pull, 7 if attendants hang. ' +
        'At the road 45 to 70 min after first arrival, freeing not counted.',
    );
    expect(studySentence(haulStudy(), 'metric')).toContain('20 m along the outer lane');
  });

  it('turns round with the road', () => {
    const { bench } = haulStudy();
    expect(us(haulStudy({ bench: { ...bench!, gradeDeg: -2 } }))).toContain('Turned haul down the road');
    expect(us(haulStudy({ bench: { ...bench!, gradeDeg: 0.3 } }))).toContain('Turned haul east along the road');
    const wide = { ...bench!, carriageway: { ...bench!.carriageway, widthM: 3, lanes: 1 } };
    expect(us(haulStudy({ bench: wide }))).toContain('along the shoulder');
  });

  it('names straight resets under 11, and leads with a straight haul where that ranks first', () => {
    expect(us(haulStudy({ layouts: [turnedLayout(), straightLayout({ resets: 7 })] }))).toContain(
      'Straight haul: 7 resets.',
    );
    const layouts = [straightLayout({ resets: 1, haulFieldM: 11, rank: 1 }), turnedLayout({ rank: 2 })];
    expect(us(haulStudy({ layouts }))).toMatch(
      /Straight haul, 3:1, 36 ft of room: 1 reset, road closed; Engine 1 as anchor\. Turned haul: 2 resets\./,
    );
  });

  it('leads with carrying or lowering where that leads the ways', () => {
    const carry = way({ kind: 'carry', people: { count: 8, atMin: 8 }, bearers: 6, minutes: { from: 25, to: 45 } });
    expect(us(haulStudy({ ways: [carry, way({ rank: 2 })] }))).toContain(
      'Six carry, one line, no haul: 8 people at 8 min, 25 to 45 min after first arrival. Else: Turned haul',
    );
    const lower = way({
      kind: 'lower',
      people: { count: 8, atMin: 8 },
      minutes: { from: 25, to: 45 },
      meets: 'an ambulance on Old Quarry Spur, 115 ft down',
    });
    expect(us(haulStudy({ ways: [lower] }))).toContain(
      'Lower to an ambulance on Old Quarry Spur, 115 ft down, no haul: 8 people at 8 min',
    );
    expect(us(haulStudy({ ways: [{ ...carry, allowed: false }] }))).not.toContain('carry');
  });

  it('tells short ropes, stages, and ropes that come late', () => {
    const short = [
      { line: 'main', byM: 17, unit: null, atMin: null },
      { line: 'belay', byM: 21, unit: null, atMin: null },
    ] as const;
    const layouts = [
      turnedLayout({
        fits: { firstArriving: 'no', firstAlarm: 'no', mutualAid: 'no', short: [...short] },
        stages: [{ count: 2, ropeLengthM: 90, at: [] }],
        minutes: { ...turnedLayout().minutes, from: null, to: null },
      }),
    ];
    const sentence = us(haulStudy({ layouts }));
    expect(sentence).toContain(
      '172 ft of main, 295 there. Rope short: main 56 ft, belay 69 ft. In 2 stages with ropes of 295 ft.',
    );
    expect(sentence).toContain('No time can be told');
    const late = { firstArriving: 'no', firstAlarm: 'no', mutualAid: 'yes' } as const;
    const mend = [{ line: 'main' as const, byM: 5, unit: 'Mutual aid', atMin: 25 }];
    expect(us(haulStudy({ layouts: [turnedLayout({ fits: { ...late, short: mend } })] }))).toContain(
      '295 there with Mutual aid at 25 min.',
    );
  });

  it('tells people who never come, two grabs, and cycles for more patients', () => {
    const people = { ...turnedLayout().people, leastRaise: { count: 25, atMin: null } };
    const team = { ...turnedLayout().team, checkGrab: true };
    const given = { ...haulStudy().given, patients: 2 };
    const sentence = us(haulStudy({ layouts: [turnedLayout({ people, team })], given }));
    expect(sentence).toContain('25 to raise never come (20 do): 5 pull on two grabs, 7 if attendants hang.');
    expect(sentence).toContain('for 2 patients, one cycle each');
  });

  it('tells a factor that is not met, and trees to judge', () => {
    const force = {
      at: 'main anchor',
      kind: 'hold',
      kn: 5,
      towardDeg: 0,
      capacityKn: 14,
      points: 1,
      rule: '',
    } as const;
    const unmet = { ...force, factor: 2.19, required: 3, ok: 'no' } as const;
    expect(us(haulStudy({ layouts: [turnedLayout({ forces: [unmet] })] }))).toContain(
      'Not met: hold at main anchor, 2.1 of 3 needed.',
    );
    const tree = { ...force, capacityKn: null, factor: null, required: null, ok: 'judge on site' } as const;
    const geometry: Point = { type: 'Point', coordinates: [-128, 44] };
    const layouts = [turnedLayout({ anchor: 'T3', forces: [tree] })];
    const sentence = us(
      haulStudy({
        layouts,
        marks: [{ id: 'T3', kind: 'tree', name: null, geometry }],
        spots: [spot('S:E1', 'Engine 1')],
      }),
    );
    expect(sentence).toContain('Engine 1 at the turn, tree T3 as anchor. Judge tree or rock on site.');
  });

  it('says under what weather it was worked out', () => {
    const given = { ...haulStudy().given, conditions: { wet: true, ice: false, night: true, wind: false } };
    expect(us(haulStudy({ given }))).toContain('Worked out for wet, night.');
  });
});

describe('the sentence of a place planned as high', () => {
  const base = haulStudy();
  const call = [{ who: 'Technical rope team', why: '', agency: null, phone: '555-0190', radio: 'Harrowfold rope' }];
  const sentence = us(haulStudy({ angle: { ...base.angle!, planAs: 'high' }, call }));

  it('opens with the stop line and says whom to call', () => {
    expect(sentence.startsWith(STOP_LINE)).toBe(true);
    expect(sentence).toContain('Call Technical rope team (Harrowfold rope).');
  });

  it('names a team once that two lines of the response table call', () => {
    const twice = [...call, { ...call[0]!, why: 'water below' }, { ...call[0]!, who: 'Road department', radio: null }];
    expect(us(haulStudy({ angle: { ...base.angle!, planAs: 'high' }, call: twice }))).toContain(
      'Call Technical rope team (Harrowfold rope); Road department (555-0190).',
    );
  });

  it('has no haul, no minutes and no team in it', () => {
    expect(sentence).not.toMatch(/\bmin\b|\d+ (pull|raise|lower|make contact)|[Tt]urned haul|[Ss]traight haul|people/);
  });
});

it('never certifies', () => {
  for (const study of [studyFixture(), haulStudy()]) expect(us(study)).not.toMatch(/safe|adequate|approved/i);
});
